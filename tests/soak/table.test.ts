import { afterAll, describe, expect, it } from 'vitest';
import { runTableRow, TABLE_HEAD, type TableRow } from '#tests/support/plans/table-cases.ts';

const TEN = Array.from({ length: 10 }, (_, index) => index + 1);
const ROWS: readonly TableRow[] = [
  { models: 150, lines: 200, crews: 3, seeds: TEN, budget: { seconds: 40, nodes: 100_000 }, goal: '≤ 3 % at 40 s' },
];

describe('plans of three crews from ten seeds', () => {
  const table: string[] = [];
  afterAll(() => console.info(`${TABLE_HEAD}\n${table.join('\n')}`));

  it.each(ROWS)('$models models × $lines lines × $crews crews', async (row) => {
    table.push(await runTableRow(row));
    expect(table.at(-1)).toContain('proven');
  });
});
