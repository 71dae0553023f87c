/*
 * The one measurement that would narrow a line's answer most, and by how much, found by trying each of them.
 * Invariant: a measurement is tried as if it read the likely value; the one after which start, ceiling and turns are narrowest wins.
 * Not here: what can be measured (measurements.ts), the words (lib/documents/words/measure-first-words.ts) and how wide is too wide (rules).
 * Read next: measurements.ts.
 */
import type { Step } from '#lib/units/calculation-step.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { Change, Direction, Duty, MeasureFirstEffect } from './duty.ts';
import { MEASURED, MEASUREMENTS } from './measurements.ts';
import type { ScheduleLine } from './schedule-line.ts';
import { settle } from './sheet.ts';

/** The part of a duty whose width is compared. */
export type Narrowness = Pick<Duty, 'opening' | 'closing' | 'turns'>;

/** Below this nothing is worth a trip: a fiftieth off a range, whatever its size. */
export const LEAST_GAIN = 0.02;

interface Trial {
  readonly line: ScheduleLine;
  readonly duty: Narrowness;
  readonly tryOut: (line: ScheduleLine) => Narrowness;
}

interface Best {
  readonly gain: number;
  readonly effect: MeasureFirstEffect;
}

export function measureFirst({
  steps,
  ...trial
}: Trial & { readonly steps: readonly Step[] }): MeasureFirstEffect | null {
  const { line, duty, tryOut } = trial;
  const byId = new Map(steps.map((step) => [step.id, step.result]));
  const likely = (id: string): Known<Unit> | null => byId.get(id) ?? null;
  const now = width(duty);
  let best: Best | null = typeDoubt(trial);
  for (const { sentence, apply } of MEASUREMENTS) {
    const tried = apply(line, likely);
    if (tried === null) continue;
    const after = tryOut(tried);
    const gain = now - width(after);
    if (gain > LEAST_GAIN && (best === null || gain > best.gain))
      best = { gain, effect: effectOf({ what: sentence, tries: 'one measurement', before: duty, after }) };
  }
  const ceiling = ceilingGain(trial);
  return ceiling.gain > LEAST_GAIN && ceiling.gain > (best?.gain ?? 0) ? ceiling.effect : (best?.effect ?? null);
}

/** How much narrower a range has become, in powers of e. */
export function narrowing({ before, after }: Change<Unit>): number {
  return span(before) - span(after);
}

/** A stated highest torque at the likely ceiling would cut the range of the ceiling off there. */
function ceilingGain({ line, duty }: Trial): Best {
  const { torque } = duty.opening.neverExceed;
  const cut = settle('N·m', { low: torque.low, nominal: torque.nominal, high: torque.nominal }, MEASURED);
  const said = line.torque.max !== undefined;
  const after = {
    ...duty,
    opening: { ...duty.opening, neverExceed: { ...duty.opening.neverExceed, torque: said ? torque : cut } },
  };
  const what = 'Ask the maker or the owner for the highest torque that the valve may see.';
  return {
    gain: width(duty) - width(after),
    effect: effectOf({ what, tries: 'one measurement', before: duty, after }),
  };
}

/** An unknown kind of valve: how much wider the answer is when the other common kinds are covered too. */
function typeDoubt({ line, duty, tryOut }: Trial): Best | null {
  if (line.valveType !== undefined && line.valveType.value !== 'unknown') return null;
  const others = (['globe', 'butterfly'] as const).map((type) =>
    tryOut({ ...line, valveType: { value: type, ...MEASURED } }),
  );
  const covered = <U extends Unit>(pick: (one: Narrowness) => Known<U>): Known<U> => {
    const own = pick(duty);
    const low = Math.min(own.low, ...others.map((other) => pick(other).low));
    const high = Math.max(own.high, ...others.map((other) => pick(other).high));
    return settle(own.unit, { low, nominal: own.nominal, high }, own);
  };
  const side = (direction: Direction): Narrowness[Direction] => ({
    ...duty[direction],
    starting: covered((one) => one[direction].starting),
    neverExceed: { ...duty[direction].neverExceed, torque: covered((one) => one[direction].neverExceed.torque) },
  });
  const before = { opening: side('opening'), closing: side('closing'), turns: covered((one) => one.turns) };
  const gain = width(before) - width(duty);
  const what = 'Ask what kind of valve it is: gate, globe, butterfly or another.';
  return gain > LEAST_GAIN
    ? { gain, effect: effectOf({ what, tries: 'other kinds of valve', before, after: duty }) }
    : null;
}

function effectOf({
  what,
  tries,
  before,
  after,
}: Pick<MeasureFirstEffect, 'what' | 'tries'> & {
  readonly before: Narrowness;
  readonly after: Narrowness;
}): MeasureFirstEffect {
  const direction = before.closing.starting.high > before.opening.starting.high ? 'closing' : 'opening';
  return {
    what,
    tries,
    direction,
    start: { before: before[direction].starting, after: after[direction].starting },
    ceiling: { before: before.opening.neverExceed.torque, after: after.opening.neverExceed.torque },
    turns: { before: before.turns, after: after.turns },
  };
}

function span({ low, high }: { readonly low: number; readonly high: number }): number {
  return Math.log(Math.max(high, 0.5) / Math.max(low, 0.5));
}

/** Width of the answer in powers of e: both starts, the ceiling and the turns. */
function width(duty: Narrowness): number {
  return (
    span(duty.opening.starting) + span(duty.closing.starting) + span(duty.opening.neverExceed.torque) + span(duty.turns)
  );
}
