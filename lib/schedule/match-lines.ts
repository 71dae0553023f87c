/*
 * Finds for each row of a changed list the line that it speaks of: by tag, then by place, then by row and likeness.
 * Invariant: a line and a row are paired once at most; two different tags are one valve only where the place says so.
 * Not here: what differs between them (compare-lists.ts).
 * Read next: compare-lists.ts.
 */
import type { Column } from '#lib/intake/column-names.ts';
import type { Cells } from '#lib/intake/columns.ts';

export interface LineThere {
  readonly id: number;
  readonly row: number;
  readonly cells: Cells;
  readonly measured: readonly Column[];
  /** What the list before said; null for a line that came from no list. */
  readonly listed: Cells | null;
}

export interface ListedRow {
  readonly row: number;
  readonly cells: Cells;
}

export interface Pair {
  readonly line: LineThere;
  readonly listed: ListedRow;
  /** How the pair was found. */
  readonly by: 'tag' | 'place' | 'row';
}

interface Both {
  readonly lines: readonly LineThere[];
  readonly rows: readonly ListedRow[];
}

/** Parts of the cells that must agree before two lines without a common tag are taken for one valve. */
const LIKE_ENOUGH = 0.6;

export function matchLines(both: Both): readonly Pair[] {
  const pairs: Pair[] = [];
  const lines = new Set(both.lines);
  const rows = new Set(both.rows);
  function take(found: readonly Pair[]): void {
    for (const pair of found) {
      if (!lines.has(pair.line) || !rows.has(pair.listed)) continue;
      lines.delete(pair.line);
      rows.delete(pair.listed);
      pairs.push(pair);
    }
  }
  const left = (): Both => ({ lines: [...lines], rows: [...rows] });
  take(sameKey(left(), { line: ({ listed, cells }) => tagOf(listed ?? cells), row: tagOf, by: 'tag', among: 'many' }));
  take(sameKey(left(), { line: ({ cells }) => tagOf(cells), row: tagOf, by: 'tag', among: 'many' }));
  take(sameKey(left(), { line: ({ cells }) => squeezed(tagOf(cells)), row: squeezedTag, by: 'tag', among: 'one' }));
  take(
    sameKey(left(), { line: ({ cells }) => placeOf(cells), row: placeOf, by: 'place', among: 'one' }).filter(isLike),
  );
  const untagged = (): Both => ({ lines: [...lines], rows: [...rows].filter(({ cells }) => tagOf(cells) === '') });
  take(sameKey(untagged(), { line: untaggedRow, row: (_, row) => `${row}`, by: 'row', among: 'one' }).filter(isLike));
  take(sameKey(untagged(), { line: untaggedText, row: textOf, by: 'row', among: 'many' }));
  return pairs;
}

interface Keys {
  readonly line: (line: LineThere) => string;
  readonly row: (cells: Cells, row: number) => string;
  readonly by: Pair['by'];
  /** Whether a key that stands several times pairs in order, or not at all. */
  readonly among: 'one' | 'many';
}

function sameKey({ lines, rows }: Both, { line, row, by, among }: Keys): readonly Pair[] {
  const there = grouped(lines, line);
  const said = grouped(rows, ({ cells, row: number }) => row(cells, number));
  return [...said].flatMap(([key, some]) => {
    const own = there.get(key) ?? [];
    if (key === '' || own.length === 0) return [];
    if (among === 'one') return own.length === 1 && some.length === 1 ? inOrder({ lines: own, rows: some }, by) : [];
    return identicalFirst({ lines: own, rows: some }, by);
  });
}

function grouped<One>(all: readonly One[], keyOf: (one: One) => string): ReadonlyMap<string, readonly One[]> {
  const groups = new Map<string, One[]>();
  for (const one of all) {
    const key = keyOf(one);
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return groups;
}

/** Among several with one tag those that say the same belong together; the others pair in order. */
function identicalFirst({ lines, rows }: Both, by: Pair['by']): readonly Pair[] {
  if (lines.length === 1 && rows.length === 1) return inOrder({ lines, rows }, by);
  const waiting = grouped(lines, ({ listed, cells }) => fullText(listed ?? cells));
  const used = new Set<LineThere>();
  const same: Pair[] = [];
  const others: ListedRow[] = [];
  for (const listed of rows) {
    const line = waiting.get(fullText(listed.cells))?.find((one) => !used.has(one));
    if (line) {
      used.add(line);
      same.push({ line, listed, by });
    } else others.push(listed);
  }
  return [...same, ...inOrder({ lines: lines.filter((line) => !used.has(line)), rows: others }, by)];
}

function inOrder({ lines, rows }: Both, by: Pair['by']): readonly Pair[] {
  return rows.flatMap((listed, at) => {
    const line = lines[at];
    return line ? [{ line, listed, by }] : [];
  });
}

function tagOf({ tag }: Cells): string {
  return (tag ?? '').trim().toLowerCase();
}

function squeezed(text: string): string {
  return text.replace(/[^\p{L}\p{N}]/gu, '');
}

function squeezedTag(cells: Cells): string {
  return squeezed(tagOf(cells));
}

function placeOf({ location }: Cells): string {
  return (location ?? '').trim().toLowerCase();
}

function untaggedRow({ cells, row }: LineThere): string {
  return tagOf(cells) === '' ? `${row}` : '';
}

function untaggedText({ cells, listed }: LineThere): string {
  return tagOf(cells) === '' ? textOf(listed ?? cells) : '';
}

/** All cells but the tag, as one text. */
function textOf(cells: Cells): string {
  const { tag: _, ...others } = cells;
  return fullText(others);
}

function fullText(cells: Cells): string {
  return JSON.stringify(Object.entries(cells).toSorted(([a], [b]) => (a < b ? -1 : 1)));
}

function isLike({ line, listed }: Pair): boolean {
  const a = textsOf(line.listed ?? line.cells);
  const b = textsOf(listed.cells);
  const columns = new Set([...a.keys(), ...b.keys()]);
  if (columns.size === 0) return false;
  const equal = [...columns].filter((column) => a.get(column) === b.get(column)).length;
  return equal / columns.size >= LIKE_ENOUGH;
}

function textsOf(cells: Cells): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(cells)
      .filter(([column]) => column !== 'tag')
      .map(([column, text]) => [column, text.trim().toLowerCase()]),
  );
}
