/*
 * Field guide: stem, thread and thrust.
 * Invariant: one entry a column, in the order of the template.
 * Not here: the short help (lib/intake/columns-stem.ts).
 * Read next: field-guide-torque.ts.
 */
import { CAUTIONS, type GuideEntry } from './field-guide-entry.ts';

export const STEM_GUIDE: readonly GuideEntry[] = [
  {
    field: 'stem',
    widens: ['parts', 'torque'],
    picture: 'stem-kinds',
    measure: [
      'Watch two turns. The stem comes up through a wheel that stays: rising through the wheel.',
      'Wheel and stem climb together: rising with the wheel. Neither climbs: non-rising.',
    ],
    caution: `${CAUTIONS.move} ${CAUTIONS.stem}`,
  },
  {
    field: 'stem_thread',
    widens: ['torque', 'turns', 'never'],
    picture: 'thread-pitch',
    measure: [
      'Take the outside diameter over the crests with a caliper.',
      'Lay a rule along the thread, measure over ten crests and divide by ten: that is the pitch.',
      'Flat flanks: sq. Slanting by 15° a side: Tr in millimetres, Acme by threads to the inch.',
    ],
    caution: CAUTIONS.pinch,
  },
  {
    field: 'thread_starts',
    widens: ['turns', 'torque'],
    picture: 'thread-starts',
    measure: [
      'Look at the end of the stem and count where threads begin.',
      'Or mark the stem, turn it once and measure how far it went: divide by the pitch.',
    ],
    caution: CAUTIONS.move,
  },
  {
    field: 'thread_hand',
    widens: ['paper'],
    picture: 'thread-hand',
    measure: ['Hold the picture beside the upright stem: threads that rise to the right are right-hand.'],
  },
  {
    field: 'stem_diameter',
    widens: ['torque', 'never', 'parts'],
    picture: 'stem-diameter',
    measure: [
      'Caliper over the crests of the thread, twice at a right angle.',
      'Where the stem passes a head, measure its thickest place, nuts and pins included.',
    ],
    caution: CAUTIONS.pinch,
  },
  {
    field: 'stem_material',
    widens: ['never'],
    measure: [
      'Read the data sheet. Yellow is bronze; a magnet holds carbon steel and most 13 % chrome steel, hardly the austenitic ones.',
    ],
  },
  {
    field: 'thread_friction',
    widens: ['torque', 'never'],
    measure: [
      'Known only from a test of this valve or from the maker.',
      'Otherwise leave it blank and write in the notes whether the thread is clean, greased, dry or corroded.',
    ],
  },
  {
    field: 'collar_friction',
    widens: ['torque'],
    measure: ['Known only from a test or from the maker; otherwise leave it blank.'],
  },
  {
    field: 'collar_mean_diameter',
    widens: ['torque'],
    picture: 'collar',
    measure: ['Take the outside and the inside diameter of the shoulder off the section drawing, add them and halve.'],
    caution: 'Off the drawing, not off the valve: the collar lies inside what holds the pressure.',
  },
  {
    field: 'collar_bearing',
    widens: ['torque'],
    picture: 'collar',
    measure: [
      'Read the section drawing: balls or rollers under the nut are rolling, a bronze ring is plain.',
      'A grease nipple at the yoke is a hint, not an answer.',
    ],
  },
  {
    field: 'stem_thrust',
    widens: ['torque'],
    measure: ['Take it from the maker’s sheet, with the pressure it holds at.'],
  },
  {
    field: 'packing_load',
    widens: ['torque'],
    measure: ['Take it from the maker’s sheet or a test.', 'Write in the notes when the gland was last tightened.'],
    caution: 'Leave the gland as it is: slackened under pressure it lets the medium out.',
  },
  {
    field: 'seat_diameter',
    widens: ['torque'],
    measure: [
      'Take the inside of the seat off the section drawing; a reduced bore is often a size smaller than the pipe.',
    ],
  },
  {
    field: 'travel',
    widens: ['turns', 'parts'],
    picture: 'travel',
    measure: [
      'Measure the stem above the wheel, open and closed, and subtract.',
      'With only one of them, write it as protrusion and say which it was.',
    ],
    caution: `${CAUTIONS.move} ${CAUTIONS.stem}`,
  },
  {
    field: 'valve_factor',
    widens: ['torque'],
    measure: ['Known only from a test of this valve under pressure; otherwise leave it blank.'],
  },
];
