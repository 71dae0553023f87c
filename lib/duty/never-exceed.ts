/*
 * The lowest of all known bounds for one direction, and the window of an ideal limiter.
 * Invariant: never-exceed lies above no bound at its low, nominal or high end; the window is null exactly when no setting satisfies both ends.
 * Not here: the bounds themselves (torque-bounds.ts, stem-bounds.ts) and a real limiter's error (kits).
 * Read next: assess-duty.ts.
 */
import { limiterWindow } from '#lib/engineering/limiter-window.ts';
import type { Known, Range } from '#lib/units/known-value.ts';
import { newtonMetres, ratio } from '#lib/units/quantity.ts';
import type { Direction, TorqueBound } from './duty.ts';
import { HOUSE_CONSTANTS } from './house-constants.ts';
import { remember, type Sheet, settle, term } from './sheet.ts';

export function neverExceed({
  bounds,
  direction,
  sheet,
}: {
  readonly bounds: readonly TorqueBound[];
  readonly direction: Direction;
  readonly sheet: Sheet;
}): TorqueBound {
  const valid = bounds.filter((bound) => bound.directions.includes(direction));
  const [first, ...rest] = valid;
  if (first === undefined)
    return {
      kind: 'none known',
      directions: [direction],
      torque: settle('N·m', { low: 0, nominal: 0, high: 0 }, { basis: 'assumed', source: 'No bound is known.' }),
    };
  const lowest = rest.reduce((least, bound) => (bound.torque.low < least.torque.low ? bound : least), first);
  const least = (end: 'low' | 'nominal' | 'high'): number => Math.min(...valid.map(({ torque }) => torque[end]));
  const others = valid.length - 1;
  const range = settle(
    'N·m',
    { low: least('low'), nominal: least('nominal'), high: least('high') },
    {
      basis: lowest.torque.basis,
      source: `Lowest of ${valid.length} bound${others === 0 ? '' : 's'}, here ${lowest.kind}: ${lowest.torque.source}`,
    },
  );
  const torque = sheet.tape === undefined ? range : rememberLeast(sheet, { range, valid });
  sheet.steps?.push({
    id: `never-exceed-${direction}`,
    name: `What the valve must never see, ${direction}`,
    formula: 'lowest of all bounds',
    source: 'The lowest bound that is known counts.',
    inputs: valid.map(({ kind, torque: { low, nominal, high, unit, basis, source } }, index) => ({
      symbol: `T${index + 1}`,
      name: kind,
      low,
      nominal,
      high,
      unit,
      basis,
      source,
    })),
    result: torque,
  });
  return { kind: lowest.kind, directions: [direction], torque };
}

function rememberLeast(
  sheet: Sheet,
  { range, valid }: { readonly range: Known<'N·m'>; readonly valid: readonly TorqueBound[] },
): Known<'N·m'> {
  const keys = valid.map((_, index) => `bound${index}`);
  return remember(sheet, range, {
    terms: Object.fromEntries(valid.map(({ kind, torque }, index) => [`bound${index}`, term('T', kind, torque)])),
    evaluate: (at) => Math.min(...keys.map(at)),
  });
}

/** Ideal limiter: no error, no overshoot. */
export function idealWindow({
  starting,
  limit,
}: {
  readonly starting: Known<'N·m'>;
  readonly limit: Known<'N·m'>;
}): Range<'N·m'> | null {
  const window = limiterWindow({
    startingHigh: newtonMetres(Math.max(0, starting.high)),
    neverExceedLow: limit.low,
    margin: HOUSE_CONSTANTS.limiterMargin.nominal,
    error: ratio(0),
    overshoot: newtonMetres(0),
  });
  return window.low <= window.high ? window : null;
}
