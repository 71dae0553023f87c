import { describe, expect, it } from 'vitest';
import { relaxWithRows } from '#lib/milp/cut-loop.ts';
import { type Row, startModel } from '#lib/milp/sparse-model.ts';

/** Minimise x + y with 2x + 2y ≥ 3: relaxed 1.5, whole 2. */
function program() {
  const model = startModel();
  for (let column = 0; column < 2; column += 1) model.column({ cost: 1, lower: 0, upper: 3, integer: true });
  model.row({
    lower: 3,
    upper: Number.POSITIVE_INFINITY,
    entries: [
      [0, 2],
      [1, 2],
    ],
  });
  return model.build();
}

/** The rounded row of the one above. */
const ROUNDED: Row = {
  lower: 2,
  upper: Number.POSITIVE_INFINITY,
  entries: [
    [0, 1],
    [1, 1],
  ],
};

describe('relaxWithRows', () => {
  it('gives the certified bound of the relaxation when no row is offered', async () => {
    const answer = await relaxWithRows({ model: program(), rowsFor: () => [], rounds: 5, seconds: 5 });
    if (!answer.ok || answer.value.relaxed.kind !== 'bounded') throw new Error('not bounded');
    expect(answer.value.relaxed.bound).toBeCloseTo(1.5, 6);
    expect(answer.value).toMatchObject({ rounds: 0, model: program() });
  });

  it('lifts the bound by the rows that the point does not meet, and certifies it with them', async () => {
    const answer = await relaxWithRows({
      model: program(),
      rowsFor: (values) => ((values[0] ?? 0) + (values[1] ?? 0) < 2 - 1e-6 ? [ROUNDED] : []),
      rounds: 5,
      seconds: 5,
    });
    if (!answer.ok || answer.value.relaxed.kind !== 'bounded') throw new Error('not bounded');
    expect(answer.value.relaxed.bound).toBeCloseTo(2, 6);
    expect(answer.value.rounds).toBe(1);
    expect(answer.value.model.rows).toBe(2);
  });

  it('ends after the rounds it was given, however many rows are offered', async () => {
    const answer = await relaxWithRows({ model: program(), rowsFor: () => [ROUNDED], rounds: 3, seconds: 5 });
    if (!answer.ok) throw new Error('not answered');
    expect(answer.value.rounds).toBe(3);
    expect(answer.value.model.rows).toBe(4);
  });

  it('says empty of rows that nothing meets', async () => {
    const model = startModel();
    model.column({ cost: 1, lower: 0, upper: 1, integer: false });
    model.row({ lower: 2, upper: 3, entries: [[0, 1]] });
    const answer = await relaxWithRows({ model: model.build(), rowsFor: () => [], rounds: 1, seconds: 5 });
    expect(answer.ok ? answer.value.relaxed.kind : 'failed').not.toBe('bounded');
  });
});
