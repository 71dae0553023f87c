import { describe, expect, it } from 'vitest';
import { measureRow, type Row, tellRow } from '#tests/support/table-cases.ts';

const TEN = Array.from({ length: 10 }, (_, index) => index + 1);
const ROWS: readonly Row[] = [
  ...TEN.flatMap((seed): readonly Row[] => [
    { models: 150, lines: 200, crews: 2, seed, budget: { seconds: 40, nodes: 100_000 } },
    { models: 150, lines: 200, crews: 3, seed, budget: { seconds: 40, nodes: 100_000 } },
  ]),
  { models: 150, lines: 1000, crews: 2, seed: 1, budget: { seconds: 40, nodes: 100_000 } },
  { models: 150, lines: 10_000, crews: 1, seed: 1, budget: { seconds: 25, nodes: 100_000 } },
  { models: 400, lines: 10_000, crews: 1, seed: 1, budget: { seconds: 60, nodes: 100_000 } },
];

describe('plans of long lists', () => {
  it.each(ROWS)('$models models × $lines lines × $crews crews, seed $seed', async (row) => {
    const result = await measureRow(row);
    console.info(tellRow(row, result));
    expect(result.plan.gap).toBeGreaterThanOrEqual(0);
  });
});
