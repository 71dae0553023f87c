/*
 * Every value of a plan that nobody knew, what was taken instead, for which lines, and what happens when it is wrong.
 * Invariant: a value with basis assumed or rule of thumb that the plan leans on is in the list.
 * Not here: how the value was chosen (duty).
 * Read next: quote-paper.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { rangeText } from './line-classes.ts';
import type { PaperLine } from './paper-inputs.ts';
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

export function gatherAssumptions(lines: readonly PaperLine[], system: UnitSystem): readonly Assumption[] {
  const found = new Map<string, { assumption: Assumption; tags: string[] }>();
  for (const { line, duty } of lines) {
    for (const assumption of assumptionsOf(duty, system)) {
      const key = [assumption.what, assumption.taken, assumption.basis].join('\n');
      const known = found.get(key);
      if (known === undefined) found.set(key, { assumption, tags: [line.tag] });
      else known.tags.push(line.tag);
    }
  }
  return [...found.values()]
    .map(({ assumption, tags }) => ({ ...assumption, tags }))
    .toSorted(
      (a, b) => a.what.localeCompare(b.what) || b.tags.length - a.tags.length || a.taken.localeCompare(b.taken),
    );
}

function assumptionsOf(duty: Duty, system: UnitSystem): readonly Assumption[] {
  const told = guessesOf(duty)
    .filter(({ value }) => value.basis === 'assumed' || value.basis === 'rule of thumb')
    .map(
      ({ what, value, ifWrong }): Assumption => ({
        what,
        taken: rangeText(value, system),
        basis: value.basis,
        tags: [],
        ifWrong,
      }),
    );
  if (duty.grip.stemRisesThroughWheel !== 'maybe') return told;
  return [
    ...told,
    { what: 'Stem', taken: 'may rise through the wheel', basis: 'assumed', tags: [], ifWrong: IF_WRONG.stem },
  ];
}

function guessesOf(duty: Duty): readonly Guess[] {
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
