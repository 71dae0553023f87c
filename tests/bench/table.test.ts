import { afterAll, describe, expect, it } from 'vitest';
import { buildModel } from '#lib/fleet/build-model.ts';
import { prepare } from '#lib/fleet/prepare.ts';
import { catalogueOf } from '#lib/kits/catalogue.ts';
import { explainPart } from '#lib/kits/why/explain-part.ts';
import { type MilpAnswer, solveMilp } from '#lib/milp/solve.ts';
import { checkedPlan, processorTime, processorTimedChoices, processorTimedList } from '#tests/support/checked.ts';
import { type ImpossibleTook, measureImpossible } from '#tests/support/kits/impossible-lines.ts';
import { plausibleCatalogue } from '#tests/support/kits/plausible-catalogue.ts';
import { PLAUSIBLE_SITE } from '#tests/support/lists/plausible-schedule.ts';
import { genericProgram } from '#tests/support/plans/generic-program.ts';
import {
  median,
  NO_WISHES,
  plausibleLines,
  plausibleProblem,
  runTableRow,
  TABLE_HEAD,
  type TableRow,
} from '#tests/support/plans/table-cases.ts';

const tell = (values: readonly number[]): string =>
  `median ${median(values).toFixed(1)}, most ${Math.max(...values).toFixed(1)} ms of processor time over ${values.length} lines`;

describe('one edited line', () => {
  it.each([60, 150, 400])('is searched, listed and explained among %i models', (size) => {
    const { models } = plausibleCatalogue({ seed: size, models: size });
    catalogueOf(models, NO_WISHES);
    const ask = { site: PLAUSIBLE_SITE, models, constraints: NO_WISHES };
    const served: number[] = [];
    const listed: number[] = [];
    const why: number[] = [];
    for (const lineDuty of plausibleLines({ seed: 401, lines: 24 })) {
      const { choices, milliseconds } = processorTimedChoices({ ...ask, lines: [lineDuty] });
      if (choices.unserved.length > 0) continue;
      served.push(milliseconds);
      listed.push(processorTimedList({ ...ask, lineDuty, limit: 12 }));
      why.push(processorTime(() => explainPart({ ...ask, lineDuty, part: 'D-0' })).milliseconds);
    }
    console.info(`one line × ${size} models, search (goal 50 ms at 400): ${tell(served)}`);
    console.info(`one line × ${size} models, search and list of assemblies: ${tell(listed)}`);
    console.info(`one part × ${size} models, why or why not: ${tell(why)}`);
    expect(served.length).toBeGreaterThan(5);
  });
});

describe('one impossible line', () => {
  const kinds = ['no adapter takes it', 'it bears too little'] as const;
  it.each([60, 150, 400].flatMap((size) => kinds.map((kind) => ({ size, kind }))))(
    'is explained and repaired among $size models: $kind',
    ({ size, kind }) => {
      const took = measureImpossible({ models: size, kind, lines: 80 });
      const of = (part: keyof ImpossibleTook) => tell(took.map((one) => one[part]));
      console.info(`impossible, ${kind}, × ${size} models, search: ${of('search')}`);
      console.info(
        `impossible, ${kind}, × ${size} models, explained (goal 1 ms beyond the search): ${of('explained')}`,
      );
      console.info(`impossible, ${kind}, × ${size} models, repairs: ${of('repaired')}`);
      expect(took.length).toBeGreaterThan(1);
    },
  );
});

const NODES = 100_000;
const SHORT = { seconds: 20, nodes: NODES };
const LONG = { seconds: 40, nodes: NODES };
const TEN = Array.from({ length: 10 }, (_, index) => index + 1);
const ROWS: readonly TableRow[] = [
  { models: 150, lines: 30, crews: 1, seeds: [1, 2, 3], budget: SHORT, goal: 'proven in 0.5 s' },
  { models: 150, lines: 30, crews: 2, seeds: [1, 2, 3], budget: SHORT, goal: 'proven in 1 s' },
  { models: 150, lines: 30, crews: 3, seeds: [1, 2, 3], budget: SHORT, goal: 'proven in 4 s' },
  { models: 150, lines: 200, crews: 1, seeds: [1, 2, 3], budget: LONG, goal: 'proven in 1 s' },
  { models: 150, lines: 200, crews: 2, seeds: TEN, budget: LONG, goal: '≤ 1 % at 10 s, ≤ 0.3 % at 40 s' },
  { models: 150, lines: 200, crews: 3, seeds: [1, 2, 3], budget: LONG, goal: '≤ 3 % at 40 s' },
  { models: 150, lines: 1000, crews: 1, seeds: [1, 2, 3], budget: LONG, goal: 'proven in 5 s' },
  { models: 150, lines: 1000, crews: 2, seeds: [1], budget: LONG, goal: '≤ 2 % at 40 s' },
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
];

describe('plans of whole lists', () => {
  const table: string[] = [];
  afterAll(() => console.info(`${TABLE_HEAD}\n${table.join('\n')}`));

  it.each(ROWS)('$models models × $lines lines × $crews crews', async (row) => {
    table.push(await runTableRow(row));
    expect(table.at(-1)).toContain('proven');
  });
});

/** Seconds after which the whole-model formulation is stopped and its time reported as "at least". */
const CAP = 60;

describe('the same plan by other formulations, 150 models × 200 lines × 1 crew, in one run', () => {
  it('is told as ratios of processor time', async () => {
    const row = { models: 150, lines: 200, crews: 1, seed: 1, budget: LONG };
    const { models } = plausibleCatalogue({ seed: row.models, models: row.models });
    const lines = plausibleLines(row);
    const { choices } = processorTimedChoices({ lines, site: PLAUSIBLE_SITE, models, constraints: NO_WISHES });
    const problem = { ...plausibleProblem(row, choices.classes), preference: 'cost' as const };
    await checkedPlan(problem);
    const own = await timed(() => checkedPlan(problem));
    const tree = await timed(() => {
      const { program } = prepare(problem);
      const model = buildModel({ program, aim: 'cost', settled: [], unserved: 0, crewsAlike: 'anchored' });
      return solveMilp(model.sparse, { presolve: 'on', gap: 1e-6, seconds: CAP });
    });
    const generic = await timed(() => solveMilp(genericProgram(problem), { presolve: 'on', gap: 1e-6, seconds: CAP }));
    console.info(`own: ${own.processor.toFixed(2)} s, ${own.found.proof}, ${own.found.objective.toFixed(1)}`);
    console.info(`tree form by HiGHS with presolve: ${ratio(tree, own)} (goal: 1 × or more)`);
    console.info(`whole model by assignment variables: ${ratio(generic, own)} (goal: 50 × or more)`);
    for (const { found } of [tree, generic]) {
      if (found.kind !== 'solved' || found.stop !== 'gap reached') continue;
      expect(Math.abs(found.objective - own.found.objective) / own.found.objective).toBeLessThan(2e-6);
    }
  });
});

interface Timed<Found> {
  readonly found: Found;
  readonly processor: number;
}

async function timed<Found>(run: () => Promise<Found>): Promise<Timed<Found>> {
  const before = process.cpuUsage();
  const found = await run();
  const { user, system } = process.cpuUsage(before);
  return { found, processor: (user + system) / 1e6 };
}

function ratio(other: Timed<MilpAnswer>, own: Timed<unknown>): string {
  const { found, processor } = other;
  const isCapped = found.kind !== 'solved' || found.stop !== 'gap reached';
  const reached =
    found.kind === 'solved' ? `${found.objective.toFixed(1)}, gap ${(100 * found.gap).toFixed(3)} %` : found.kind;
  return `${processor.toFixed(2)} s, ${reached}: ${isCapped ? '≥ ' : ''}${(processor / own.processor).toFixed(1)} × own`;
}
