import { readFileSync } from 'node:fs';
import { z } from 'zod';

/*
 * The entries of the shared reference folder, and what a check may see of one.
 * Invariant: a check sees inputs and names of what is expected, never its values, save those that it declares as given.
 * Not here: comparing (agreement.ts), which entries have a check (adapters.ts).
 * Read next: agreement.ts.
 */
export const REFERENCE =
  process.env.KITWRIGHT_REFERENCE ?? new URL('../../../../shared/reference', import.meta.url).pathname;

export const ENTRY_FILES = ['mechanics', 'safety-transport-trade'] as const;
export type EntryFile = (typeof ENTRY_FILES)[number];

export type Value =
  | number
  | string
  | boolean
  | null
  | readonly Value[]
  | { readonly [name: string]: Value | undefined };
export type Leaf = number | string | boolean | null;

const value: z.ZodType<Value> = z.json();
const entry = z.object({
  id: z.string(),
  topic: z.string(),
  inputs: value,
  expected: value,
  tolerance: z.string(),
  obtained: z.enum(['read', 'memory']),
  confidence: z.enum(['high', 'med', 'low']),
});
export type Entry = Readonly<z.infer<typeof entry>>;

/** What a check works from. */
export interface Given {
  readonly id: string;
  readonly inputs: Value;
  /** The expected value with its values blanked, save those that the check declares as given. */
  readonly shape: Value;
}

export interface Check {
  /** Works out with our own functions what the entry expects, in the same shape. */
  readonly find: (given: Given) => Value;
  /** Paths of the expected value that are inputs of ours; `*` stands for any name. */
  readonly given?: readonly string[];
  /** Paths that nothing of ours says, and why. */
  readonly besides?: Readonly<Record<string, string>>;
  /** Why no number among the inputs moves the answer. */
  readonly unmoved?: string;
}
export type Checks = Readonly<Record<string, Check>>;

const read = new Map<EntryFile, readonly Entry[]>();

export function entriesOf(file: EntryFile): readonly Entry[] {
  const known = read.get(file);
  if (known !== undefined) return known;
  const entries = z.array(entry).parse(JSON.parse(readFileSync(`${REFERENCE}/engineering/${file}.json`, 'utf8')));
  read.set(file, entries);
  return entries;
}

const JOINT = ' > ';
const EMPTY = '(empty)';

/** Every leaf with its path; an empty list is a leaf of its own, so that its emptiness is compared. */
export function leavesOf(tree: Value, path = ''): ReadonlyMap<string, Leaf> {
  const at = (name: string): string => (path === '' ? name : `${path}${JOINT}${name}`);
  if (tree === null || typeof tree !== 'object') return new Map([[path, tree]]);
  const branches = branchesOf(tree);
  if (branches.length === 0) return new Map([[path, EMPTY]]);
  return new Map(branches.flatMap(([name, branch]) => [...leavesOf(branch, at(name))]));
}

/** The same tree with every leaf changed by its path. */
export function mapLeaves(tree: Value, change: (leaf: Leaf, path: string) => Leaf, path = ''): Value {
  const at = (name: string): string => (path === '' ? name : `${path}${JOINT}${name}`);
  if (tree === null || typeof tree !== 'object') return change(tree, path);
  const branches = branchesOf(tree).map(([name, branch]) => [name, mapLeaves(branch, change, at(name))] as const);
  if (branches.length === 0) {
    const changed = change(EMPTY, path);
    return changed === EMPTY || changed === null ? tree : changed;
  }
  return Array.isArray(tree) ? branches.map(([, branch]) => branch) : Object.fromEntries(branches);
}

export function isAt(path: string, patterns: readonly string[]): boolean {
  const names = path.split(JOINT);
  return patterns.some((pattern) => {
    const wanted = pattern.split(JOINT);
    return wanted.every((name, index) => name === '*' || name === names[index]);
  });
}

function branchesOf(tree: object): readonly (readonly [string, Value])[] {
  return Object.entries(tree).flatMap(([name, branch]) => (branch === undefined ? [] : [[name, branch] as const]));
}
