import { describe, expect, it } from 'vitest';
import { appendRows } from '#lib/milp/append-rows.ts';
import { at, startModel } from '#lib/milp/sparse-model.ts';

function twoColumns() {
  const model = startModel();
  model.column({ cost: 3, lower: 0, upper: 4, integer: true });
  model.column({ cost: -1, lower: 1, upper: Number.POSITIVE_INFINITY, integer: false });
  return model;
}

describe('startModel', () => {
  it('writes columns and rows in compressed form', () => {
    const model = twoColumns();
    expect(model.row({ lower: 1, upper: 9, entries: [[0, 2]] })).toBe(0);
    expect(
      model.row({
        lower: 2,
        upper: 2,
        entries: [
          [1, 5],
          [0, -1],
        ],
      }),
    ).toBe(1);
    expect(model.build()).toEqual({
      columns: 2,
      rows: 2,
      cost: Float64Array.of(3, -1),
      columnLower: Float64Array.of(0, 1),
      columnUpper: Float64Array.of(4, Number.POSITIVE_INFINITY),
      integer: Uint8Array.of(1, 0),
      rowLower: Float64Array.of(1, 2),
      rowUpper: Float64Array.of(9, 2),
      rowStart: Int32Array.of(0, 1, 3),
      entryColumn: Int32Array.of(0, 1, 0),
      entryValue: Float64Array.of(2, 5, -1),
    });
  });

  it('adds up entries of the same column and leaves out what comes to nothing', () => {
    const model = twoColumns();
    model.row({
      lower: 0,
      upper: 1,
      entries: [
        [0, 2],
        [1, 1],
        [0, 3],
        [1, -1],
      ],
    });
    const built = model.build();
    expect([...built.entryColumn]).toEqual([0]);
    expect([...built.entryValue]).toEqual([5]);
  });

  it.each([
    ['a cost that is no number', () => startModel().column({ cost: Number.NaN, lower: 0, upper: 1, integer: false })],
    ['crossed bounds of a column', () => startModel().column({ cost: 0, lower: 2, upper: 1, integer: false })],
    ['crossed bounds of a row', () => twoColumns().row({ lower: 2, upper: 1, entries: [] })],
    ['a column that does not exist', () => twoColumns().row({ lower: 0, upper: 1, entries: [[2, 1]] })],
    [
      'an endless coefficient',
      () => twoColumns().row({ lower: 0, upper: 1, entries: [[0, Number.POSITIVE_INFINITY]] }),
    ],
  ])('refuses %s', (_, make) => {
    expect(make).toThrow();
  });

  it('refuses an index outside an array', () => {
    expect(() => at([1, 2], 2)).toThrow(/outside/);
  });
});

describe('appendRows', () => {
  it('gives the model that would have been written with the rows, and leaves the given one alone', () => {
    const short = twoColumns();
    short.row({ lower: 1, upper: 9, entries: [[0, 2]] });
    const before = short.build();
    const more = [
      { lower: 0, upper: 5, entries: [[1, 4] as const] },
      { lower: -1, upper: 1, entries: [[0, 1] as const, [1, -1] as const] },
    ];
    const long = twoColumns();
    long.row({ lower: 1, upper: 9, entries: [[0, 2]] });
    for (const row of more) long.row(row);
    expect(appendRows(before, more)).toEqual(long.build());
    expect(before).toEqual(short.build());
    expect(appendRows(before, [])).toBe(before);
  });
});
