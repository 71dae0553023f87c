import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Column } from '#lib/intake/column-names.ts';
import type { Cells } from '#lib/intake/columns.ts';
import { compareLists } from '#lib/schedule/compare-lists.ts';
import type { LineThere, ListedRow } from '#lib/schedule/match-lines.ts';
import { placeSequence } from '#lib/schedule/place-sequence.ts';
import { type ComparisonChoice, takeComparison } from '#lib/schedule/take-comparison.ts';
import { writeCells } from '#lib/schedule/write-cells.ts';

const COLUMNS: readonly Column[] = ['tag', 'size', 'location', 'notes'];
const RUNS = 1500;

const texts = fc.option(fc.constantFrom('A', 'a', 'B-1', 'B1', 'C', 'DN 80', ' DN 80'), { nil: undefined });
const cellsOf = fc
  .record({ tag: texts, size: texts, location: texts, notes: texts })
  .map(
    (cells): Cells => Object.fromEntries(Object.entries(cells).flatMap(([name, text]) => (text ? [[name, text]] : []))),
  );
const listOf = fc
  .array(cellsOf, { maxLength: 9 })
  .map((all) => all.map((cells, at): ListedRow => ({ row: at + 2, cells })));

function linesOf(rows: readonly ListedRow[]): readonly LineThere[] {
  return rows.map(({ row, cells }, at) => ({ id: at + 1, row, cells, measured: [], listed: cells }));
}

function taken(
  lines: readonly LineThere[],
  { rows, choice }: { readonly rows: readonly ListedRow[]; readonly choice: ComparisonChoice },
) {
  const lists = { lines, rows, columns: COLUMNS };
  const result = takeComparison({ ...lists, comparison: compareLists(lists), choice });
  const written = writeCells({ lines: new Map(lines.map((line) => [line.id, line])), writes: result.writes });
  expect(written.clashes).toEqual([]);
  const now = new Map([...lines, ...written.lines].map(({ id, cells }) => [id, cells]));
  return result.sequence.map((place) => (place.kind === 'new' ? place.row.cells : (now.get(place.id) ?? {})));
}

function trimmed(all: readonly Cells[]) {
  return all.map((cells) => Object.fromEntries(Object.entries(cells).map(([name, text]) => [name, text.trim()])));
}

const NOTHING: ComparisonChoice = { added: [], gone: [], cells: [], order: 'keep' };

describe('a changed list', () => {
  it('compared with what was taken from it shows nothing', () => {
    let lines = 0;
    fc.assert(
      fc.property(listOf, (rows) => {
        const found = compareLists({ lines: linesOf(rows), rows, columns: COLUMNS });
        expect(found).toMatchObject({ added: [], gone: [], changed: [], same: rows.length, order: 'same' });
        lines += rows.length;
      }),
      { numRuns: RUNS, seed: 1 },
    );
    console.info(`${lines} lines compared with themselves`);
  });

  it('taken whole in its own order gives the list', () => {
    let changes = 0;
    fc.assert(
      fc.property(listOf, listOf, (before, rows) => {
        const lines = linesOf(before);
        const found = compareLists({ lines, rows, columns: COLUMNS });
        const choice: ComparisonChoice = {
          added: found.added.map(({ row }) => row),
          gone: found.gone.map(({ lineId }) => lineId),
          cells: found.changed.flatMap(({ lineId, cells }) => cells.map(({ column }) => ({ lineId, column }))),
          order: 'list',
        };
        changes += choice.added.length + choice.gone.length + choice.cells.length;
        expect(trimmed(taken(lines, { rows, choice }))).toEqual(trimmed(rows.map(({ cells }) => cells)));
      }),
      { numRuns: RUNS, seed: 2 },
    );
    console.info(`${changes} differences taken`);
    expect(changes).toBeGreaterThan(RUNS);
  });

  it('of which nothing is taken leaves the schedule as it was', () => {
    let rowsLeft = 0;
    fc.assert(
      fc.property(listOf, listOf, (before, rows) => {
        expect(taken(linesOf(before), { rows, choice: NOTHING })).toEqual(before.map(({ cells }) => cells));
        rowsLeft += rows.length;
      }),
      { numRuns: RUNS, seed: 3 },
    );
    console.info(`${rowsLeft} rows left out`);
  });

  it('pairs each line and each row once at most, and loses none', () => {
    let pairs = 0;
    fc.assert(
      fc.property(listOf, listOf, (before, rows) => {
        const found = compareLists({ lines: linesOf(before), rows, columns: COLUMNS });
        expect(new Set(found.pairs.map(({ lineId }) => lineId)).size).toBe(found.pairs.length);
        expect(new Set(found.pairs.map(({ row }) => row)).size).toBe(found.pairs.length);
        expect(found.pairs.length + found.added.length).toBe(rows.length);
        expect(found.pairs.length + found.gone.length).toBe(before.length);
        pairs += found.pairs.length;
      }),
      { numRuns: RUNS, seed: 4 },
    );
    console.info(`${pairs} pairs`);
  });
});

describe('places', () => {
  it('grow along any sequence, and lines that are in order keep theirs', () => {
    let kept = 0;
    const place = fc.option(fc.integer({ min: 1, max: 60 }), { nil: null });
    fc.assert(
      fc.property(fc.array(place, { maxLength: 12 }), (all) => {
        const positions = placeSequence(all.map((position, id) => (position === null ? null : { id, position })));
        expect(positions.every((position, at) => at === 0 || position > (positions[at - 1] ?? 0))).toBe(true);
        const there = all.filter((one) => one !== null);
        if (there.every((one, at) => at === 0 || one > (there[at - 1] ?? 0))) {
          expect(positions.filter((_, at) => all[at] !== null)).toEqual(there);
          kept += 1;
        }
      }),
      { numRuns: RUNS, seed: 5 },
    );
    console.info(`${kept} sequences kept their places`);
    expect(kept).toBeGreaterThan(100);
  });
});
