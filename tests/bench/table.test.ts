import { describe, expect, it } from 'vitest';
import { explainPart } from '#lib/kits/explain-part.ts';
import { processorTime, processorTimedChoices, processorTimedList } from '#tests/support/checked.ts';
import { plausibleCatalogue } from '#tests/support/plausible-catalogue.ts';
import { PLAUSIBLE_SITE } from '#tests/support/plausible-schedule.ts';
import { measureRow, NO_WISHES, plausibleLines, type Row, tellRow } from '#tests/support/table-cases.ts';

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const tell = (values: readonly number[]): string =>
  `median ${median(values).toFixed(1)}, most ${Math.max(...values).toFixed(1)} ms of processor time over ${values.length} lines`;

describe('one edited line', () => {
  it.each([60, 150, 400])('is searched, listed and explained among %i models', (size) => {
    const { models } = plausibleCatalogue({ seed: size, models: size });
    const ask = { site: PLAUSIBLE_SITE, models, constraints: NO_WISHES };
    const served: number[] = [];
    const listed: number[] = [];
    const impossible: number[] = [];
    const why: number[] = [];
    for (const lineDuty of plausibleLines({ seed: 401, lines: 24 })) {
      const { choices, milliseconds } = processorTimedChoices({ ...ask, lines: [lineDuty] });
      (choices.unserved.length > 0 ? impossible : served).push(milliseconds);
      if (choices.unserved.length > 0) continue;
      listed.push(processorTimedList({ ...ask, lineDuty, limit: 12 }));
      why.push(processorTime(() => explainPart({ ...ask, lineDuty, part: 'D-0' })).milliseconds);
    }
    console.info(`one line × ${size} models, search: ${tell(served)}`);
    console.info(`one line × ${size} models, search and list of assemblies: ${tell(listed)}`);
    if (impossible.length > 0) console.info(`one impossible line × ${size} models, explained: ${tell(impossible)}`);
    console.info(`one part × ${size} models, why or why not: ${tell(why)}`);
    expect(served.length).toBeGreaterThan(5);
  });
});

const ROWS: readonly Row[] = [
  { models: 150, lines: 30, crews: 1, seed: 1, budget: { seconds: 20, nodes: 5000 } },
  { models: 150, lines: 30, crews: 2, seed: 1, budget: { seconds: 20, nodes: 5000 } },
  { models: 150, lines: 30, crews: 3, seed: 1, budget: { seconds: 20, nodes: 5000 } },
  { models: 150, lines: 200, crews: 1, seed: 1, budget: { seconds: 40, nodes: 5000 } },
  { models: 150, lines: 200, crews: 2, seed: 1, budget: { seconds: 40, nodes: 5000 } },
  { models: 150, lines: 200, crews: 3, seed: 1, budget: { seconds: 40, nodes: 5000 } },
  { models: 150, lines: 1000, crews: 1, seed: 1, budget: { seconds: 40, nodes: 5000 } },
];

describe('plans of whole lists', () => {
  it.each(ROWS)('$models models × $lines lines × $crews crews', async (row) => {
    const result = await measureRow(row);
    console.info(tellRow(row, result));
    expect(result.plan.gap).toBeGreaterThanOrEqual(0);
  });
});
