import { afterAll, describe, expect, it } from 'vitest';
import { runTableRow, TABLE_HEAD, type TableRow } from '#tests/support/plans/table-cases.ts';

const TEN = Array.from({ length: 10 }, (_, index) => index + 1);
const NODES = 100_000;
const ROWS: readonly TableRow[] = [
  {
    models: 150,
    lines: 10_000,
    crews: 1,
    seeds: [1],
    budget: { seconds: 25, nodes: NODES },
    goal: '≤ 0.01 % at 10 s, proven in 25 s, 1.5 GB',
  },
  {
    models: 400,
    lines: 10_000,
    crews: 1,
    seeds: [1],
    budget: { seconds: 60, nodes: NODES },
    goal: 'an answer with its bound in 60 s, 2 GB',
  },
  {
    models: 150,
    lines: 200,
    crews: 2,
    seeds: TEN,
    budget: { seconds: 40, nodes: NODES },
    goal: '≤ 1 % at 10 s, ≤ 0.3 % at 40 s, each',
  },
  { models: 150, lines: 200, crews: 3, seeds: TEN, budget: { seconds: 40, nodes: NODES }, goal: '≤ 3 % at 40 s' },
];

describe('plans of long lists and of ten seeds', () => {
  const table: string[] = [];
  afterAll(() => console.info(`${TABLE_HEAD}\n${table.join('\n')}`));

  it.each(ROWS)('$models models × $lines lines × $crews crews', async (row) => {
    table.push(await runTableRow(row));
    expect(table.at(-1)).toContain('proven');
  });
});
