/*
 * The last figures of a duty as steps of its calculation: the ends of an ideal limiter's window each way, and the highest speed.
 * Invariant: the steps end in the very figures that the duty shows; they are written down even where no setting satisfies both ends.
 * Not here: working them out (never-exceed.ts, speed-limits.ts).
 * Read next: never-exceed.ts.
 */
import { exactly, type Known } from '#lib/units/known-value.ts';
import { DIRECTIONS, type Direction, type DirectionDuty } from './duty.ts';
import { HOUSE_CONSTANTS } from './house-constants.ts';
import { calculate, lookUp, type Sheet, term } from './sheet.ts';

export function writeSettingSteps({
  duty,
  maxInputSpeed,
  sheet,
}: {
  readonly duty: Readonly<Record<Direction, DirectionDuty>>;
  readonly maxInputSpeed: Known<'1/min'>;
  readonly sheet: Sheet;
}): void {
  lookUp(sheet, { id: 'max-input-speed', name: 'Highest speed at the wheel or nut', value: maxInputSpeed });
  for (const direction of DIRECTIONS) windowSteps({ duty: duty[direction], direction, sheet });
}

function windowSteps({
  duty: { starting, neverExceed },
  direction,
  sheet,
}: {
  readonly duty: DirectionDuty;
  readonly direction: Direction;
  readonly sheet: Sheet;
}): void {
  calculate(sheet, {
    id: `limiter-from-${direction}`,
    name: `Lowest setting of an ideal limiter, ${direction}`,
    formula: 'T1 = T0·m',
    unit: 'N·m',
    source: 'House rule: the limiter must let through the highest torque that starting may take, with a margin.',
    terms: {
      starting: term(
        'T0',
        'highest starting torque',
        exactly('N·m', Math.max(0, starting.high), { basis: starting.basis, source: starting.source }),
      ),
      margin: term('m', 'margin', HOUSE_CONSTANTS.limiterMargin),
    },
    evaluate: (at) => at('starting') * at('margin'),
  });
  lookUp(sheet, {
    id: `limiter-to-${direction}`,
    name: `Highest setting of an ideal limiter, ${direction}: the lowest that the valve must never see`,
    value: exactly('N·m', neverExceed.torque.low, {
      basis: neverExceed.torque.basis,
      source: neverExceed.torque.source,
    }),
  });
}
