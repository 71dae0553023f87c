import { describe, expect, it } from 'vitest';
import { asksDuty, cellsPass, filterFromQuery, filterToQuery, NO_FILTER, showsAll } from '#lib/schedule/line-filter.ts';
import { placeBetween } from '#lib/schedule/place-between.ts';
import { replaceText } from '#lib/schedule/replace-text.ts';
import { wayBack } from '#lib/schedule/schedule-change.ts';
import { sortLines } from '#lib/schedule/sort-lines.ts';
import { writeCells } from '#lib/schedule/write-cells.ts';

const read = (query: string) => filterFromQuery(new URLSearchParams(query));

describe('a filter in the address', () => {
  it('reads back as it was written, also with colons and signs in its text', () => {
    const filter = {
      ...NO_FILTER,
      text: 'mill & weir',
      findings: 'doubt' as const,
      cells: [
        { column: 'size' as const, test: { kind: 'has' as const, text: 'DN: 80&x' } },
        { column: 'notes' as const, test: { kind: 'empty' as const } },
      ],
      bases: [{ column: 'starting' as const, basis: 'rule of thumb' as const }],
      sort: { column: 'turns' as const, way: 'down' as const },
    };
    expect(read(filterToQuery(filter))).toEqual(filter);
    expect(filterToQuery(NO_FILTER)).toBe('');
  });

  it('leaves out what it cannot read, and shows all then', () => {
    const filter = read('only=purple&where=colour:has:red&where=size:likes:80&where=starting:basis:hope&sort=-colour');
    expect(filter).toEqual(NO_FILTER);
    expect(showsAll(filter)).toBe(true);
  });

  it('asks the duty only where it must', () => {
    expect(['text=a', 'where=size:empty', 'only=refused', 'sort=size'].map((query) => asksDuty(read(query)))).toEqual(
      Array.from({ length: 4 }, () => false),
    );
    expect(
      ['only=clear', 'only=warnings', 'where=turns:basis:assumed', 'sort=-starting'].every((query) =>
        asksDuty(read(query)),
      ),
    ).toBe(true);
  });

  it.each([
    ['where=size:has:80', true],
    ['where=size:is:dn%2080', true],
    ['where=size:lacks:80', false],
    ['where=size:filled', true],
    ['where=notes:empty', true],
    ['where=size:measured', true],
    ['where=tag:unmeasured', true],
    ['where=notes:unmeasured', false],
    ['only=refused', true],
    ['only=doubt', false],
    ['text=zz', false],
  ])('%s lets the line through: %s', (query, passes) => {
    const line = {
      cells: { tag: 'A', size: 'DN 80' },
      measured: ['size' as const],
      problems: [{ severity: 'refused' }],
    };
    expect(cellsPass(read(query), line)).toBe(passes);
  });
});

describe('the order of a column', () => {
  it('takes numbers inside texts as numbers, keeps equals in order and puts empty cells last either way', () => {
    const keys = ['DN 100', '', 'DN 80', 'dn 80'].map((key, id) => ({ id, key }));
    expect(sortLines(keys, 'up')).toEqual([2, 3, 0, 1]);
    expect(sortLines(keys, 'down')).toEqual([0, 2, 3, 1]);
  });

  it('numbers are ordered by what they are, and what could not be read stands behind them', () => {
    const keys = ([0.15, 'as the old one', 0.1, 0.0254, ''] as const).map((key, id) => ({ id, key }));
    expect(sortLines(keys, 'up')).toEqual([3, 2, 0, 1, 4]);
  });
});

describe('replacing', () => {
  const lines = [{ id: 1, cells: { tag: 'A.1', size: 'DN 80', notes: 'a.1 (old)' } }];
  const base = { find: 'a.1', put: '$&x', columns: [], match: 'part' as const, letters: 'any' as const };

  it('takes signs for themselves, in what is found and in what is put', () => {
    expect(replaceText(lines, base).map(({ after }) => after)).toEqual(['$&x', '$&x (old)']);
    expect(replaceText(lines, { ...base, find: 'aX1' })).toEqual([]);
    expect(replaceText(lines, { ...base, find: '(' })).toHaveLength(1);
  });

  it('keeps to whole cells, to capitals and to its columns when asked, and finds nothing for nothing', () => {
    expect(replaceText(lines, { ...base, match: 'whole' }).map(({ column }) => column)).toEqual(['tag']);
    expect(replaceText(lines, { ...base, letters: 'exact' }).map(({ column }) => column)).toEqual(['notes']);
    expect(replaceText(lines, { ...base, columns: ['size'] })).toEqual([]);
    expect(replaceText(lines, { ...base, find: '' })).toEqual([]);
  });
});

describe('places between lines', () => {
  const lines = [
    { id: 1, position: 1 },
    { id: 2, position: 2 },
  ];

  it('lie between their neighbours, before the first and after the last', () => {
    expect(placeBetween({ lines, at: 1, count: 3 })).toEqual({ positions: [1.25, 1.5, 1.75], shift: [] });
    expect(placeBetween({ lines, at: 0, count: 1 }).positions).toEqual([0.5]);
    expect(placeBetween({ lines, at: 2, count: 2 }).positions).toEqual([3, 4]);
    expect(placeBetween({ lines: [], at: 0, count: 1 }).positions).toEqual([1]);
  });

  it('push the lines below away where there is no room', () => {
    const tight = [
      { id: 1, position: 1 },
      { id: 2, position: 1 + 1e-7 },
    ];
    const { positions, shift } = placeBetween({ lines: tight, at: 1, count: 2 });
    expect(positions).toEqual([2, 3]);
    expect(shift).toEqual([{ id: 2, position: 4 }]);
  });
});

describe('writing cells', () => {
  it('and taking the change back leaves the line as it was, also where a cell was written twice', () => {
    const lines = new Map([[1, { cells: { tag: 'A', size: 'DN 80' }, measured: ['size' as const] }]]);
    const writes = [
      { lineId: 1, column: 'size' as const, text: ' DN 90 ' },
      { lineId: 1, column: 'size' as const, text: '' },
      { lineId: 1, column: 'notes' as const, text: 'x', measured: true },
    ];
    const done = writeCells({ lines, writes });
    expect(done.lines).toEqual([{ id: 1, cells: { tag: 'A', notes: 'x' }, measured: ['notes'] }]);
    const change = { cells: done.done, added: [], removed: [], moved: [], relisted: [] };
    const back = writeCells({
      lines: new Map(done.lines.map((line) => [line.id, line])),
      writes: wayBack(change).cells,
    });
    expect(back.lines).toEqual([{ id: 1, cells: { tag: 'A', size: 'DN 80' }, measured: ['size'] }]);
    expect(back.clashes).toEqual([]);
  });
});
