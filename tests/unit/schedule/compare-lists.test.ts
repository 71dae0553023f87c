import { describe, expect, it } from 'vitest';
import type { Cells } from '#lib/intake/columns.ts';
import { compareLists } from '#lib/schedule/compare-lists.ts';
import type { LineThere } from '#lib/schedule/match-lines.ts';

function line(id: number, cells: Cells, more: Partial<LineThere> = {}): LineThere {
  return { id, row: id + 1, cells, measured: [], listed: cells, ...more };
}

function compare(lines: readonly LineThere[], cells: readonly Cells[]) {
  const rows = cells.map((one, at) => ({ row: at + 2, cells: one }));
  return compareLists({ lines, rows, columns: ['tag', 'size', 'location'] });
}

describe('a changed list beside the schedule', () => {
  it('tells rows that came, lines that are gone and cells that changed', () => {
    const lines = [line(1, { tag: 'A', size: 'DN 80' }), line(2, { tag: 'B', size: 'DN 100' })];
    const found = compare(lines, [
      { tag: 'a', size: 'DN 90' },
      { tag: 'C', size: 'DN 50' },
    ]);
    expect(found.added.map(({ cells }) => cells.tag)).toEqual(['C']);
    expect(found.gone).toEqual([{ lineId: 2, kind: 'listed' }]);
    expect(found.changed).toMatchObject([
      {
        lineId: 1,
        by: 'tag',
        cells: [
          { column: 'tag', now: 'A', next: 'a', kind: 'changed' },
          { column: 'size', before: 'DN 80', now: 'DN 80', next: 'DN 90', kind: 'changed' },
        ],
      },
    ]);
  });

  it('what the Desk wrote stands where the list says what it said before, and conflicts where it changed', () => {
    const listed = { tag: 'A', size: 'DN 80' };
    const lines = [line(1, { tag: 'A', size: 'DN 100' }, { listed })];
    expect(compare(lines, [listed]).changed).toEqual([]);
    expect(compare(lines, [{ tag: 'A', size: 'DN 100' }]).changed).toEqual([]);
    expect(compare(lines, [{ tag: 'A', size: 'DN 150' }]).changed[0]?.cells).toEqual([
      { column: 'size', before: 'DN 80', now: 'DN 100', next: 'DN 150', kind: 'conflict' },
    ]);
  });

  it('a value measured on the valve is never replaced without being asked', () => {
    const lines = [line(1, { tag: 'A', size: 'DN 80' }, { measured: ['size'] })];
    expect(compare(lines, [{ tag: 'A', size: 'DN 90' }]).changed[0]?.cells[0]?.kind).toBe('conflict');
  });

  it('a column that the list does not have is left alone', () => {
    const lines = [line(1, { tag: 'A', turns: '24' })];
    expect(compare(lines, [{ tag: 'A' }]).changed).toEqual([]);
  });

  it('a cell that the list empties is a change', () => {
    const lines = [line(1, { tag: 'A', size: 'DN 80' })];
    expect(compare(lines, [{ tag: 'A' }]).changed[0]?.cells).toMatchObject([{ column: 'size', next: '' }]);
  });

  it('a line typed at the Desk is not taken for one that the customer dropped', () => {
    expect(compare([line(1, { tag: 'X' }, { listed: null })], []).gone).toEqual([{ lineId: 1, kind: 'typed' }]);
    const edited = line(2, { tag: 'Y', size: 'DN 50' }, { listed: { tag: 'Y' } });
    expect(compare([edited], []).gone).toEqual([{ lineId: 2, kind: 'edited' }]);
  });

  it('a new tag at the same place is the same valve, and elsewhere it is another', () => {
    const at = { size: 'DN 80', location: 'Mill Lane 4' };
    expect(compare([line(1, { tag: 'A', ...at })], [{ tag: 'A-NEW', ...at }]).changed).toMatchObject([
      { lineId: 1, by: 'place', cells: [{ column: 'tag', next: 'A-NEW' }] },
    ]);
    const elsewhere = compare([line(1, { tag: 'A', size: 'DN 80' })], [{ tag: 'B', size: 'DN 80' }]);
    expect(elsewhere).toMatchObject({ changed: [], gone: [{ lineId: 1 }], added: [{ row: 2 }] });
  });

  it('a tag written another way is the same tag', () => {
    expect(compare([line(1, { tag: 'SV-101' })], [{ tag: 'SV 101' }]).changed).toMatchObject([{ by: 'tag' }]);
  });

  it('lines without tags are found by their row, or by saying the same', () => {
    const lines = [line(1, { size: 'DN 80', location: 'North' }), line(2, { size: 'DN 100' })];
    const found = compare(lines, [{ size: 'DN 100' }, { size: 'DN 80', location: 'North' }]);
    expect(found).toMatchObject({ changed: [], added: [], gone: [], order: 'other' });
  });
});
