/*
 * The history of a subject as a person reads it: who, when, and which values became which.
 * Invariant: the newest change comes first.
 * Not here: writing changes (keep-change.ts) and taking one back (retire-model.ts).
 * Read next: ../keep-change.ts.
 */
import { changesOf } from '#db/queries/changes.ts';
import type { Context } from '#lib/services/context.ts';

export interface ChangeView {
  readonly id: number;
  readonly at: string;
  readonly who: string;
  readonly action: string;
  readonly version: number;
  /** Values that differ, by the path where they stand; at most forty are told. */
  readonly differences: readonly Difference[];
  readonly more: number;
}

export interface Difference {
  readonly path: string;
  readonly before: string;
  readonly after: string;
}

const DIFFERENCES_TOLD = 40;

export function readHistory(context: Context, subject: string): readonly ChangeView[] {
  return changesOf(context.database.db, subject).map((row) => {
    const differences = differencesOf(
      leavesOf(JSON.parse(row.before_json ?? 'null')),
      leavesOf(JSON.parse(row.after_json ?? 'null')),
    );
    const { id, at, who, action, version } = row;
    const told = differences.slice(0, DIFFERENCES_TOLD);
    return { id, at, who, action, version, differences: told, more: differences.length - told.length };
  });
}

type Leaves = ReadonlyMap<string, string>;

/** Where both were there, what differs; a thing that came or went whole is told by its action alone. */
function differencesOf(before: Leaves, after: Leaves): readonly Difference[] {
  if (before.size === 0 || after.size === 0) return [];
  return [...new Set([...before.keys(), ...after.keys()])]
    .map((path) => ({ path, before: before.get(path) ?? '', after: after.get(path) ?? '' }))
    .filter((difference) => difference.before !== difference.after);
}

function leavesOf(value: unknown, path = ''): Leaves {
  if (value === null || value === undefined) return new Map();
  if (typeof value !== 'object') return new Map([[path, String(value)]]);
  return new Map(
    Object.entries(value).flatMap(([key, below]) => [...leavesOf(below, path === '' ? key : `${path}.${key}`)]),
  );
}
