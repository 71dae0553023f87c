/*
 * Field guide: turns, torque, limits and gearbox.
 * Invariant: one entry a column, in the order of the template.
 * Not here: the short help (lib/intake/columns-stem.ts).
 * Read next: field-guide-drive.ts.
 */
import { CAUTIONS, type GuideEntry } from './field-guide-entry.ts';

export const TORQUE_GUIDE: readonly GuideEntry[] = [
  {
    field: 'turns',
    widens: ['turns', 'time'],
    measure: [
      'Mark the wheel, start at the closed end and count to the open end, with halves.',
      'On paper: travel divided by the lead of the thread; for a gearbox with a quarter turn, ratio divided by four.',
    ],
    caution: CAUTIONS.move,
  },
  {
    field: 'starting_torque',
    widens: ['torque'],
    picture: 'torque-wrench',
    measure: [
      'Put a torque wrench with its adapter in the middle of the wheel’s hub, or on the nut.',
      'Pull slowly and read the highest figure at the moment it starts. Note which way.',
    ],
    caution: `${CAUTIONS.move} Stop at the torque the valve is allowed; a bar on the wrench breaks stems.`,
  },
  {
    field: 'running_torque',
    widens: ['torque'],
    picture: 'torque-wrench',
    measure: [
      'Keep the wrench moving slowly and read the steady figure, each way.',
      'Read again where it gets stiff and say at which turn.',
    ],
    caution: CAUTIONS.move,
  },
  {
    field: 'max_torque',
    widens: ['never'],
    measure: [
      'Read the nameplate or the maker’s sheet. Say whether it holds at the wheel, at the stem or at the gearbox input.',
    ],
  },
  {
    field: 'min_stroke_time',
    widens: ['speed'],
    measure: ['Ask whoever answers for pressure surges on the line, and how long the pipe is.'],
  },
  {
    field: 'max_input_speed',
    widens: ['speed'],
    measure: ['Read it off the gearbox’s plate or sheet, in turns a minute.'],
  },
  {
    field: 'gearbox',
    widens: ['torque', 'turns', 'never'],
    picture: 'gearbox-kinds',
    measure: [
      'Wheel shaft at a right angle to the stem and offset from it: worm. On the stem’s axis line, at a right angle: bevel.',
      'A long housing along the wheel shaft: travelling nut. Shafts side by side: spur.',
    ],
    caution: 'Look from outside: a gearbox that is opened may let the valve move.',
  },
  {
    field: 'gear_ratio',
    widens: ['torque', 'turns', 'never'],
    picture: 'gearbox-kinds',
    measure: [
      'Read the plate.',
      'Else count turns of the wheel for a known part of the travel: a quarter turn of the valve in 10 turns of the wheel is 40 : 1.',
    ],
    caution: CAUTIONS.move,
  },
  {
    field: 'gear_efficiency',
    widens: ['torque', 'never'],
    measure: [
      'Take it from the maker’s sheet. Beside it may stand a mechanical advantage, which is ratio times efficiency: say which it is.',
    ],
  },
  {
    field: 'output_torque',
    widens: ['torque'],
    measure: ['Take it from the valve’s sheet, at the pressure of the work, with the maker’s own margin named.'],
  },
  {
    field: 'end_stops',
    widens: ['paper'],
    measure: ['Look for two set screws on the housing, and read what the maker allows on them.'],
    caution: 'Set screws are not turned to find out: they hold the valve’s end position.',
  },
  {
    field: 'flange',
    widens: ['never'],
    picture: 'flange',
    measure: [
      'Measure between the centres of two opposite bolts: 70 mm is F07, 102 mm F10, 125 mm F12, 140 mm F14, 165 mm F16.',
    ],
  },
  {
    field: 'closes',
    widens: ['paper', 'time'],
    picture: 'closes',
    measure: [
      'Read the arrow on the wheel, facing it.',
      'With none, turn by hand a quarter turn and watch stem or indicator.',
    ],
    caution: CAUTIONS.move,
  },
];
