/*
 * One row of the table of speeds: an invented catalogue and list, planned from lines to plan, with what it took.
 */
import { assessDuties } from '#lib/duty/assess-duties.ts';
import type { FleetPlan, LineClass } from '#lib/equipment/choices.ts';
import type { FleetProblem } from '#lib/fleet/fleet-problem.ts';
import type { Choices, LineDuty } from '#lib/kits/find-choices.ts';
import { toMinor } from '#lib/money/money.ts';
import { pairDuties } from '#lib/planning/pose-problem.ts';
import { bestRate } from '#lib/pricing/best-rate.ts';
import { seconds } from '#lib/units/quantity.ts';
import { checkedPlan, onceCheckedChoices } from '../checked.ts';
import { plausibleCatalogue } from '../kits/plausible-catalogue.ts';
import { PLAUSIBLE_SITE, plausibleSchedule } from '../lists/plausible-schedule.ts';

export const NO_WISHES = { lockedParts: [], excludedParts: [], pins: [] } as const;

export interface Row {
  readonly models: number;
  readonly lines: number;
  readonly crews: number;
  readonly seed: number;
  readonly budget: FleetProblem['budget'];
}

/** A row of the table: what is planned, from which seeds, and what it is meant to reach. */
export interface TableRow extends Omit<Row, 'seed'> {
  readonly seeds: readonly number[];
  readonly goal: string;
}

/** Seconds of running time of this process alone, the machine's other work apart. */
export type Took = Readonly<Record<'duty' | 'kits' | 'plan', number>>;

export interface RowResult {
  readonly plan: FleetPlan;
  readonly choices: Choices;
  /** By the clock on the wall. */
  readonly seconds: Took;
  /** Of the processor. */
  readonly processor: Took;
  /** Gap known after so many seconds of processor time of the plan. */
  readonly gapAt: Readonly<Record<10 | 40, number>>;
}

export function plausibleLines(at: { readonly seed: number; readonly lines: number }): readonly LineDuty[] {
  const lines = plausibleSchedule(at);
  return pairDuties(lines, assessDuties({ lines, site: PLAUSIBLE_SITE }));
}

/** Hours enough for the usual way of working at six tenths of the time, shared by the crews. */
export function plausibleProblem(row: Row, classes: readonly LineClass[]): Omit<FleetProblem, 'preference'> {
  const { models, free } = plausibleCatalogue({ seed: row.models, models: row.models });
  const usual = classes.reduce((sum, one) => sum + one.qty * (one.moveTime + 1100), 0);
  return {
    classes,
    items: models.map((model) => ({
      id: model.number,
      cost_minor: bestRate({ rates: model.rates, days: PLAUSIBLE_SITE.days }).total_minor,
      mass: model.mass,
      pieces: 1,
      free: free[model.number] ?? 0,
    })),
    crews: row.crews,
    secondsPerCrew: seconds(Math.round(usual / row.crews / 0.6)),
    labour_minor_per_hour: toMinor(5500),
    budget: row.budget,
  };
}

export async function measureRow(row: Row): Promise<RowResult> {
  const { models } = plausibleCatalogue({ seed: row.models, models: row.models });
  const clocks = [readClocks()];
  const lines = plausibleLines(row);
  clocks.push(readClocks());
  const ask = { lines, site: PLAUSIBLE_SITE, models, constraints: NO_WISHES };
  const choices = onceCheckedChoices(ask, () => {
    clocks.push(readClocks());
  });
  const gapAt = { 10: 1, 40: 1 };
  const before = readClocks();
  const watch = (gap: number): void => {
    const spent = readClocks().processor - before.processor;
    if (spent <= 10) gapAt[10] = gap;
    if (spent <= 40) gapAt[40] = gap;
  };
  const plan = await checkedPlan({
    ...plausibleProblem(row, choices.classes),
    preference: 'cost',
    // The clock on the wall would measure what else the machine does.
    budget: { ...row.budget, seconds: WALL_FACTOR * row.budget.seconds },
    interrupt: () => readClocks().processor - before.processor > row.budget.seconds,
    onProgress: ({ best, bound }) => watch((best - bound) / Math.max(1, Math.abs(best))),
  });
  watch(plan.gap);
  const planned = readClocks();
  const between = (of: keyof Clocks): Took => ({
    duty: spanOf({ clocks, at: 0, of }),
    kits: spanOf({ clocks, at: 1, of }),
    plan: planned[of] - before[of],
  });
  return { plan, choices, seconds: between('wall'), processor: between('processor'), gapAt };
}

/** A row's budget is seconds of the processor; the clock on the wall is only a last stop. */
const WALL_FACTOR = 20;

interface Clocks {
  readonly wall: number;
  readonly processor: number;
}

function readClocks(): Clocks {
  const { user, system } = process.cpuUsage();
  return { wall: performance.now() / 1000, processor: (user + system) / 1e6 };
}

function spanOf(from: { readonly clocks: readonly Clocks[]; readonly at: number; readonly of: keyof Clocks }): number {
  const { clocks, at, of } = from;
  return (clocks[at + 1]?.[of] ?? Number.NaN) - (clocks[at]?.[of] ?? Number.NaN);
}

export const rowName = ({ models, lines, crews }: Omit<Row, 'seed' | 'budget'>): string =>
  `${models} × ${lines} × ${crews}`;

export const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN;

export function tellRow(row: Row, { plan, choices, seconds: took, processor }: RowResult): string {
  const gap = `${plan.proof}, gap ${(100 * plan.gap).toFixed(4)} %`;
  const times = (['duty', 'kits', 'plan'] as const).map((part) => `${part} ${processor[part].toFixed(2)} s`);
  const wall = (took.duty + took.kits + took.plan).toFixed(1);
  const memory = Math.round(process.resourceUsage().maxRSS / 1024);
  return `${rowName(row)}, seed ${row.seed}: ${choices.classes.length} classes, ${plan.served} of ${plan.asked} valves, ${gap}; ${times.join(', ')} of the processor, ${wall} s in all by the clock; most memory so far ${memory} MB; ${JSON.stringify(plan.effort)}`;
}

/** Runs a row from all its seeds and tells each run; the answer is its line of the table. */
export async function runTableRow(row: TableRow): Promise<string> {
  const results: RowResult[] = [];
  for (const seed of row.seeds) {
    const result = await measureRow({ ...row, seed });
    console.info(tellRow({ ...row, seed }, result));
    results.push(result);
  }
  const middle = (of: (one: RowResult) => number) => median(results.map(of));
  const most = (of: (one: RowResult) => number) => Math.max(...results.map(of));
  const percent = (gap: number) => `${(100 * gap).toFixed(gap < 1e-5 ? 0 : 3)} %`;
  const proven = results.filter(({ plan }) => plan.proof === 'proven').length;
  const cells = [
    rowName(row),
    row.goal,
    `${proven} of ${results.length} proven`,
    `${percent(middle(({ gapAt }) => gapAt[10]))} / ${percent(middle(({ gapAt }) => gapAt[40]))} / ${percent(most(({ plan }) => plan.gap))}`,
    `${middle(({ processor }) => processor.plan).toFixed(2)} s`,
    `${middle(({ processor }) => processor.kits).toFixed(2)} s`,
    `${middle(({ seconds: took }) => took.plan).toFixed(2)} s`,
    `${Math.round(process.resourceUsage().maxRSS / 1024)} MB`,
  ];
  return `| ${cells.join(' | ')} |`;
}

export const TABLE_HEAD = [
  '| models × lines × crews | goal | standing | gap at 10 s / at 40 s / at the end, worst | plan, processor | search, processor | plan, clock | most memory so far |',
  '|---|---|---|---|---|---|---|---|',
].join('\n');
