/*
 * By how much the measurement to make first would narrow the answer, in words.
 * Invariant: only what becomes noticeably narrower is told, and that it holds if the reading is as is likely.
 * Not here: finding the measurement (lib/duty/measure-first.ts).
 * Read next: ../../duty/measure-first.ts.
 */

import type { Change, Duty, MeasureFirstEffect } from '#lib/duty/duty.ts';
import { LEAST_GAIN, narrowing } from '#lib/duty/measure-first.ts';
import { formatRange, type UnitSystem } from '#lib/units/format-quantity.ts';
import type { Unit } from '#lib/units/quantity.ts';

/** What to measure first and by how much it narrows the answer; null where nothing is worth a trip. */
export function measureFirstText(
  { measureFirst, measureFirstEffect }: Pick<Duty, 'measureFirst' | 'measureFirstEffect'>,
  system: UnitSystem,
): string | null {
  if (measureFirst === null) return null;
  const effect = measureFirstEffect === null ? '' : sayEffect(measureFirstEffect, system);
  return effect === '' ? measureFirst : `${measureFirst} ${effect}`;
}

/** Empty where no single figure becomes noticeably narrower. */
function sayEffect(effect: MeasureFirstEffect, system: UnitSystem): string {
  const { tries, direction, start, ceiling, turns } = effect;
  const other = tries === 'other kinds of valve';
  const told = [
    change(`the torque to start ${direction}`, start),
    change('the torque it must never see', ceiling),
    change('the turns', turns),
  ].filter((text) => text !== null);
  if (told.length === 0) return '';
  const listed = told.length === 1 ? told[0] : `${told.slice(0, -1).join(', ')} and ${told.at(-1)}`;
  return other
    ? `The kind that is taken narrows ${listed}: another kind may lie outside.`
    : `If it reads as is likely, it narrows ${listed}.`;

  function change(what: string, one: Change<Unit>): string | null {
    if (narrowing(one) <= LEAST_GAIN) return null;
    return `${what} from ${formatRange(one.before, system)} to ${formatRange(one.after, system)}`;
  }
}
