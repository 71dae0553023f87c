/*
 * The history of a subject as a person reads it: who, when, and which values became which.
 * Invariant: the newest change comes first.
 * Not here: writing changes (keep-change.ts) and taking one back (retire-model.ts).
 * Read next: told-states.ts.
 */
import { changesOf } from '#db/queries/changes.ts';
import type { Context } from '#lib/services/context.ts';
import type { Told } from './told-states.ts';

export interface ChangeView {
  readonly id: number;
  readonly at: string;
  readonly who: string;
  readonly action: string;
  readonly version: number;
  /** Values that differ, by the words of their fields; at most forty are told. */
  readonly differences: readonly Difference[];
  readonly more: number;
}

export interface Difference {
  readonly name: string;
  readonly before: string;
  readonly after: string;
}

const DIFFERENCES_TOLD = 40;

interface Asked<State> {
  readonly subject: string;
  /** How a kept state is told: texts by what they are called. */
  readonly tell: (state: State) => Told;
}

export function readHistory<State>(context: Context, { subject, tell }: Asked<State>): readonly ChangeView[] {
  return changesOf(context.database.db, subject).map((row) => {
    const differences = differencesOf(
      tell(JSON.parse(row.before_json ?? 'null')),
      tell(JSON.parse(row.after_json ?? 'null')),
    );
    const { id, at, who, action, version } = row;
    const told = differences.slice(0, DIFFERENCES_TOLD);
    return { id, at, who, action, version, differences: told, more: differences.length - told.length };
  });
}

/** Where both were there, what differs; a thing that came or went whole is told by its action alone. */
function differencesOf(before: Told, after: Told): readonly Difference[] {
  if (before.size === 0 || after.size === 0) return [];
  return [...new Set([...before.keys(), ...after.keys()])]
    .map((name) => ({ name, before: before.get(name) ?? '', after: after.get(name) ?? '' }))
    .filter((difference) => difference.before !== difference.after);
}
