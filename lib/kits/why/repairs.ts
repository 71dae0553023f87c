/*
 * Cheapest repairs: one change of the line, the site or the torque after which the line can be served, as a number where it is one; two together where no single one helps.
 * Invariant: a repair is only told after the search has found an assembly with it.
 * Not here: why it could not be served (explain-none.ts) and carrying a repair out (services).
 * Read next: repair-trials.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import type { LineFacts } from '#lib/rules/facts.ts';
import { type Told, tell } from '#lib/units/say-figure.ts';
import { catalogueOf } from '../catalogue.ts';
import { newTally } from '../refusals.ts';
import { type ClassQuestion, canBeServed } from '../search-class.ts';
import type { KitConstraints } from '../wishes.ts';
import type { RepairStep } from './repair-step.ts';
import { trialsFor } from './repair-trials.ts';
import type { Trial } from './trial.ts';

export interface Repair extends Told {
  readonly id?: string;
  readonly cost?: string;
  /** How it is carried out; absent where that is for somebody else to do. */
  readonly steps?: readonly RepairStep[];
}

const MOST_REPAIRS = 6;
const MOST_PAIRS = 3;

export interface RepairInput {
  readonly question: ClassQuestion;
  readonly conflict: readonly string[];
  readonly models: readonly Model[];
  readonly constraints: KitConstraints;
  /** Pairs take some milliseconds and are looked for where one line is looked at. */
  readonly depth: 'single changes' | 'pairs too';
}

export function findRepairs(input: RepairInput): readonly Repair[] {
  const trials = trialsFor(input);
  const repairs: Repair[] = [];
  for (const trial of trials) {
    if (repairs.length >= MOST_REPAIRS) break;
    if (repairs.some(({ id }) => id === trial.id)) continue;
    const value = trial.find((tried) => works(input, [{ trial, value: tried }]));
    if (value !== null) repairs.push(told([{ trial, value }]));
  }
  const all = [...repairs, ...unexcluded(input)];
  return all.length > 0 || input.depth === 'single changes' ? all : findPairs(input, trials);
}

/** A trial at one of its numbers. */
interface AtNumber {
  readonly trial: Trial;
  readonly value: number;
}

function works({ question }: RepairInput, sets: readonly AtNumber[]): boolean {
  const facts = sets.reduce<LineFacts>((at, { trial, value }) => trial.at(value).to(at), question.facts);
  const isFree = sets.some(({ trial }) => trial.wishes === 'none');
  const held = { ...question, facts, tally: newTally(), ...(isFree ? { wishes: [] } : {}) };
  // What may be made to order may be used besides all stock pieces, so that one search answers for both.
  const free = { ...held, made: 'made to order too' as const };
  return canBeServed(free);
}

function told(sets: readonly AtNumber[]): Repair {
  const changes = sets.map(({ trial, value }) => ({ ...trial.at(value), id: trial.id, cost: trial.cost }));
  const [first] = changes;
  const isOne = changes.length === 1 && first !== undefined;
  const sentence = isOne
    ? first.sentence
    : `It can be served if two things hold: ${changes.map(({ clause }) => clause).join(', and ')}.`;
  const costs = [...new Set(changes.flatMap(({ cost }) => cost ?? []))];
  const canBeDone = changes.every(({ steps }) => steps !== undefined);
  return {
    id: changes.map(({ id }) => id).join(' + '),
    ...tell(sentence),
    ...(costs.length === 0 ? {} : { cost: costs.join(', ') }),
    ...(canBeDone ? { steps: changes.flatMap(({ steps }) => steps ?? []) } : {}),
  };
}

/** Two changes at their furthest, then each drawn back as far as the other allows. */
function findPairs(input: RepairInput, trials: readonly Trial[]): readonly Repair[] {
  const pairs: Repair[] = [];
  for (const [index, first] of trials.entries()) {
    for (const second of trials.slice(index + 1)) {
      if (pairs.length >= MOST_PAIRS) return pairs;
      if (second.id === first.id) continue;
      const far = (trial: Trial): AtNumber => ({ trial, value: trial.widest });
      if (!works(input, [far(first), far(second)])) continue;
      const one = first.find((value) => works(input, [{ trial: first, value }, far(second)])) ?? first.widest;
      const near = { trial: first, value: one };
      const two = second.find((value) => works(input, [near, { trial: second, value }])) ?? second.widest;
      pairs.push(told([near, { trial: second, value: two }]));
    }
  }
  return pairs;
}

/** Parts that a person left out and that would help: one alone where one is enough. */
function unexcluded(at: RepairInput): readonly Repair[] {
  const { excludedParts } = at.constraints;
  if (excludedParts.length === 0) return [];
  const helps = (back: readonly string[]): boolean => {
    const out = excludedParts.filter((part) => !back.includes(part));
    const free = { ...at.question, ...catalogueOf(at.models, { excludedParts: out }), tally: newTally() };
    return canBeServed({ ...free, made: 'made to order too' });
  };
  if (!helps(excludedParts)) return [];
  const single = excludedParts.filter((part) => helps([part])).slice(0, MOST_PAIRS);
  const sets = single.length > 0 ? single.map((part) => [part]) : [excludedParts];
  return sets.map((parts) => ({
    id: 'use-again',
    sentence: `It can be served when the parts left out (${parts.join(', ')}) may be used again.`,
    steps: [{ kind: 'use again', parts }],
  }));
}
