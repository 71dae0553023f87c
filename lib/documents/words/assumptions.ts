/*
 * Every value of a plan that nobody knew, what was taken instead, for which lines, and what happens when it is wrong.
 * Invariant: a value with basis assumed or rule of thumb that the plan leans on is in the list.
 * Not here: how the value was chosen (duty).
 * Read next: ../papers/quote-paper.ts.
 */

import { rangeText } from '#lib/documents/papers/line-classes.ts';
import type { PaperLine } from '#lib/documents/papers/paper-inputs.ts';
import type { Duty } from '#lib/duty/duty.ts';
import { formatRange, type UnitSystem } from '#lib/units/format-quantity.ts';
import { type Known, known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { IF_WRONG } from './safety-words.ts';

export interface Assumption {
  readonly what: string;
  readonly taken: string;
  readonly basis: string;
  readonly tags: readonly string[];
  readonly ifWrong: string;
}

interface Guess {
  readonly what: string;
  readonly value: Known<Unit>;
  readonly ifWrong: string;
}

/** One guess of one line, before equal ones are told together. */
interface Told extends Assumption {
  readonly value: Known<Unit> | null;
}

/** Values that come out of others and stand on the site sheet class by class; many of them are told as one range. */
const BY_CLASS: ReadonlySet<string> = new Set([
  'Torque to start, opening',
  'Torque to start, closing',
  'Turns for one stroke',
]);
const FEW = 4;

export function gatherAssumptions(lines: readonly PaperLine[], system: UnitSystem): readonly Assumption[] {
  const told = lines.flatMap(({ line, duty }) =>
    guessesOf(duty, system).map((guess): Told => ({ ...guess, tags: [line.tag] })),
  );
  return alike(told, ({ what, basis }) => `${what}\n${basis}`)
    .flatMap((group) => asTold(group, system))
    .toSorted(
      (a, b) => a.what.localeCompare(b.what) || b.tags.length - a.tags.length || a.taken.localeCompare(b.taken),
    );
}

/** Equal guesses together with all their lines; of values that stand class by class one range when they are many. */
function asTold(group: readonly Told[], system: UnitSystem): readonly Assumption[] {
  const equal = alike(group, ({ taken }) => taken).flatMap(merged);
  const values = group.flatMap(({ value }) => (value === null ? [] : [value]));
  const [first] = values;
  if (first === undefined || equal.length <= FEW || !BY_CLASS.has(group[0]?.what ?? '')) return equal;
  const low = Math.min(...values.map((value) => value.low));
  const high = Math.max(...values.map((value) => value.high));
  const whole = formatRange(
    known(first.unit, { low, nominal: low, high }, { basis: first.basis, source: first.source }),
    system,
  );
  return merged(group).map((one) => ({
    ...one,
    taken: `${whole} in all; ${equal.length} values, each on the site sheet`,
  }));
}

/** Those of one key together, in the order of their first. */
function alike(told: readonly Told[], keyOf: (one: Told) => string): readonly (readonly Told[])[] {
  const groups = new Map<string, Told[]>();
  for (const one of told) {
    const group = groups.get(keyOf(one));
    if (group === undefined) groups.set(keyOf(one), [one]);
    else group.push(one);
  }
  return [...groups.values()];
}

function merged(equal: readonly Told[]): readonly Assumption[] {
  const [first] = equal;
  if (first === undefined) return [];
  const { what, taken, basis, ifWrong } = first;
  return [{ what, taken, basis, ifWrong, tags: [...new Set(equal.flatMap(({ tags }) => tags))] }];
}

function guessesOf(duty: Duty, system: UnitSystem): readonly Told[] {
  const told = valuesOf(duty)
    .filter(({ value }) => value.basis === 'assumed' || value.basis === 'rule of thumb')
    .map(
      ({ what, value, ifWrong }): Told => ({
        what,
        value,
        taken: rangeText(value, system),
        basis: value.basis,
        tags: [],
        ifWrong,
      }),
    );
  if (duty.grip.stemRisesThroughWheel !== 'maybe') return told;
  return [
    ...told,
    {
      what: 'Stem',
      value: null,
      taken: 'may rise through the wheel',
      basis: 'assumed',
      tags: [],
      ifWrong: IF_WRONG.stem,
    },
  ];
}

function valuesOf(duty: Duty): readonly Guess[] {
  const { grip } = duty;
  const guesses: Guess[] = [];
  if (grip.wheelDiameter !== undefined)
    guesses.push({ what: 'Wheel diameter', value: grip.wheelDiameter, ifWrong: IF_WRONG.wheel });
  if (grip.wheelDish !== undefined)
    guesses.push({ what: 'Wheel dish', value: grip.wheelDish, ifWrong: IF_WRONG.wheel });
  for (const nut of grip.nutSizes ?? []) guesses.push({ what: 'Nut across flats', value: nut, ifWrong: IF_WRONG.nut });
  if (grip.depthToNut !== undefined)
    guesses.push({ what: 'Depth to the nut', value: grip.depthToNut, ifWrong: IF_WRONG.depth });
  if (grip.stemProtrusion !== undefined)
    guesses.push({ what: 'Stem above the wheel', value: grip.stemProtrusion, ifWrong: IF_WRONG.stem });
  guesses.push({ what: 'Turns for one stroke', value: duty.turns, ifWrong: IF_WRONG.turns });
  guesses.push({ what: 'Torque to start, opening', value: duty.opening.starting, ifWrong: IF_WRONG.torque });
  guesses.push({ what: 'Torque to start, closing', value: duty.closing.starting, ifWrong: IF_WRONG.torque });
  guesses.push({
    what: `Torque the valve must never see (${duty.closing.neverExceed.kind})`,
    value: duty.closing.neverExceed.torque,
    ifWrong: IF_WRONG.never,
  });
  guesses.push({ what: 'Highest input speed', value: duty.maxInputSpeed, ifWrong: IF_WRONG.speed });
  if (duty.minStrokeTime !== null)
    guesses.push({ what: 'Shortest stroke time', value: duty.minStrokeTime, ifWrong: IF_WRONG.speed });
  return guesses;
}
