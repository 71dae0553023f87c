/*
 * How much more than running it takes to start a valve: by condition, time at rest and age.
 * Invariant: never below one; thermal binding and pressure locking are findings, never part of this factor.
 * Not here: seized valves: a state of their own that goes to the Desk.
 * Read next: line-findings.ts.
 */
import type { Spread } from '#lib/engineering/valve-tables.ts';
import type { Basis, Known } from '#lib/units/known-value.ts';
import { HOUSE_CONSTANTS } from './house-constants.ts';
import type { ScheduleLine } from './schedule-line.ts';
import { combine, lookUp, type Sheet, settle, term } from './sheet.ts';
import type { ValveCharacter } from './valve-character.ts';

export interface StartingFactors {
  /** Out of the closed seat: wedging and stiction. */
  readonly opening: Known<'1'>;
  /** Off the open end: stiction alone. */
  readonly closing: Known<'1'>;
}

const BY_CONDITION: Readonly<Record<'free' | 'stiff' | 'seized' | 'unknown', Spread>> = {
  free: [1.05, 1.2, 1.4],
  unknown: [1.15, 1.45, 1.8],
  stiff: [1.5, 2.1, 3],
  seized: [2, 3, 5],
};

export function startingFactors({
  line,
  character,
  sheet,
}: {
  readonly line: ScheduleLine;
  readonly character: ValveCharacter;
  readonly sheet: Sheet;
}): StartingFactors {
  const condition = line.state.condition?.value ?? 'unknown';
  let [low, nominal, high] = BY_CONDITION[condition];
  const reasons: string[] = [condition === 'unknown' ? 'condition not given' : `said to be ${condition}`];
  const { idle, age } = character;
  if (idle !== null && idle >= 15) {
    [nominal, high] = [nominal + 0.4, high + 0.6];
    reasons.push(`not moved for ${idle} years`);
  } else if (idle !== null && idle >= 5) {
    [nominal, high] = [nominal + 0.2, high + 0.3];
    reasons.push(`not moved for ${idle} years`);
  } else if (idle !== null && idle <= 1 && condition === 'unknown') {
    [low, nominal, high] = [1.05, 1.3, 1.55];
    reasons.push('moved within a year');
  }
  if (age !== null && age >= HOUSE_CONSTANTS.yearsUntilOld.nominal) {
    [nominal, high] = [nominal + 0.1, high + 0.3];
    reasons.push(`${age} years old`);
  }
  const basis: Basis = condition === 'unknown' && idle === null ? 'assumed' : 'rule of thumb';
  const source = `Starting against running, ${reasons.join(', ')}; common practice, no source.`;
  const opening = settle('1', { low, nominal, high }, { basis, source });
  const closing = combine(sheet, {
    unit: '1',
    origin: { basis, source: `Half of the opening surplus, as nothing is wedged at the open end: ${source}` },
    terms: { opening: term('k', 'starting factor', opening) },
    evaluate: (at) => 1 + (at('opening') - 1) / 2,
  });
  return {
    opening: lookUp(sheet, { id: 'starting-factor-opening', name: 'Starting factor, opening', value: opening }),
    closing: lookUp(sheet, { id: 'starting-factor-closing', name: 'Starting factor, closing', value: closing }),
  };
}
