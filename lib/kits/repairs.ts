/*
 * Cheapest repairs: one change of the line, the site or the torque after which the line can be served, as a number where it is one.
 * Invariant: a repair is only told after the search has found an assembly with it.
 * Not here: why it could not be served (explain-none.ts).
 * Read next: repair-trials.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import { type Told, tell } from '#lib/units/say-figure.ts';
import { refusalsOf } from './conflict-table.ts';
import { findFrames } from './frames.ts';
import { newTally } from './refusals.ts';
import { type Trial, trialsFor } from './repair-trials.ts';
import { type ClassQuestion, canBeServed } from './search-class.ts';
import { stockByRole } from './stock-by-role.ts';
import type { KitConstraints } from './wishes.ts';

export interface Repair extends Told {
  readonly cost?: string;
}

const MOST_REPAIRS = 6;

export function findRepairs({
  question,
  conflict,
  models,
  constraints,
}: {
  readonly question: ClassQuestion;
  readonly conflict: readonly string[];
  readonly models: readonly Model[];
  readonly constraints: KitConstraints;
}): readonly Repair[] {
  const repairs: Repair[] = [];
  const named = refusalsOf(new Set(conflict));
  const works = (trial: Trial): boolean => {
    const held = { ...question, facts: trial.facts ?? question.facts, tally: newTally() };
    // What may be made to order may be used besides all stock pieces, so that one search answers for both.
    const free = { ...(trial.wishes === 'none' ? { ...held, wishes: [] } : held), made: 'made to order too' as const };
    // Where the rules of the conflict alone still cannot all hold, all rules cannot; that is the quicker question.
    return canBeServed({ ...free, refusals: named }) && canBeServed(free);
  };
  for (const trial of trialsFor({ question, conflict })) {
    if (repairs.length >= MOST_REPAIRS) break;
    const told =
      trial.narrow === undefined
        ? works(trial)
          ? trial.sentence
          : null
        : trial.narrow((facts) => works({ ...trial, facts }));
    if (told !== null) repairs.push({ ...tell(told), ...(trial.cost === undefined ? {} : { cost: trial.cost }) });
  }
  return [...repairs, ...unexcluded({ question, models, constraints })];
}

/** Parts that a person left out and that would help. */
function unexcluded(at: {
  readonly question: ClassQuestion;
  readonly models: readonly Model[];
  readonly constraints: KitConstraints;
}): readonly Repair[] {
  if (at.constraints.excludedParts.length === 0) return [];
  const stock = stockByRole(at.models);
  const free = { ...at.question, stock, frames: findFrames(stock), tally: newTally() };
  if (!canBeServed({ ...free, made: 'made to order too' })) return [];
  return [
    {
      sentence: `It can be served when the parts left out (${at.constraints.excludedParts.join(', ')}) may be used again.`,
    },
  ];
}
