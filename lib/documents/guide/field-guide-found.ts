/*
 * Field guide: what a crew writes down after the work, beside the columns that a list has too.
 * Invariant: names are those of a visit (lib/found).
 * Not here: turns, torques, condition, wheel and nut, which are columns.
 * Read next: field-guide.ts.
 */
import { CAUTIONS, type LabelledEntry } from './field-guide-entry.ts';

export const FOUND_GUIDE: readonly LabelledEntry[] = [
  {
    field: 'position_found',
    label: 'As found',
    help: 'Where the valve stood before anybody moved it.',
    unknown: 'Nobody can say afterwards whether it was put back.',
    widens: ['paper'],
    picture: 'open-closed',
    measure: [
      'Look before the first tool is on: stem, indicator, mark on the wheel.',
      'Write open, closed, or turns from closed once they are counted.',
    ],
  },
  {
    field: 'full_stroke',
    label: 'Full stroke',
    help: 'Whether the turns counted are those of the whole travel.',
    unknown: 'The turns are taken as part of a stroke and prove nothing for the next visit.',
    widens: ['turns'],
    measure: ['Yes only if it went from one end to the other, the last turns by hand.'],
  },
  {
    field: 'highest_torque',
    label: 'Highest torque',
    help: 'The highest torque that was shown at any moment of the work.',
    unknown: 'The next visit starts as low as this one did.',
    widens: ['torque'],
    picture: 'torque-wrench',
    measure: ['Read the drive’s or the limiter’s highest figure and say at which turn it was.'],
    caution: 'After a stall release slowly and reverse to relieve, before anybody reads or touches anything.',
  },
  {
    field: 'position_left',
    label: 'As left',
    help: 'Where the valve stands when the crew goes.',
    unknown: 'Whoever runs the line does not know what they have.',
    widens: ['paper'],
    picture: 'open-closed',
    measure: ['Look once more after the tool is off, and tell whoever runs the line.'],
  },
  {
    field: 'defects',
    label: 'Defects',
    help: 'What is broken, bent, leaking or missing.',
    unknown: 'The next crew meets it unprepared.',
    widens: ['parts', 'never'],
    measure: ['Leak at gland or flange, bent stem, broken wheel, missing key, torn box: write each, with a photo.'],
    caution: CAUTIONS.stem,
  },
];
