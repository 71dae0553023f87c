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
import { checkedPlan, onceTimedChoices } from './checked.ts';
import { plausibleCatalogue } from './plausible-catalogue.ts';
import { PLAUSIBLE_SITE, plausibleSchedule } from './plausible-schedule.ts';

export const NO_WISHES = { lockedParts: [], excludedParts: [], pins: [] } as const;

export interface Row {
  readonly models: number;
  readonly lines: number;
  readonly crews: number;
  readonly seed: number;
  readonly budget: FleetProblem['budget'];
}

export interface RowResult {
  readonly plan: FleetPlan;
  readonly choices: Choices;
  readonly seconds: Readonly<Record<'duty' | 'kits' | 'plan', number>>;
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
  const started = performance.now();
  const lines = plausibleLines(row);
  const assessed = performance.now();
  const ask = { lines, site: PLAUSIBLE_SITE, models, constraints: NO_WISHES };
  const { choices, milliseconds } = onceTimedChoices(ask);
  const found = performance.now();
  const plan = await checkedPlan({ ...plausibleProblem(row, choices.classes), preference: 'cost' });
  const planned = performance.now();
  return {
    plan,
    choices,
    seconds: { duty: (assessed - started) / 1000, kits: milliseconds / 1000, plan: (planned - found) / 1000 },
  };
}

export const rowName = ({ models, lines, crews }: Row): string => `${models} × ${lines} × ${crews}`;

export function tellRow(row: Row, { plan, choices, seconds: took }: RowResult): string {
  const gap = `${plan.proof}, gap ${(100 * plan.gap).toFixed(4)} %`;
  const times = `duty ${took.duty.toFixed(2)} s, kits ${took.kits.toFixed(2)} s, plan ${took.plan.toFixed(2)} s`;
  const memory = Math.round(process.resourceUsage().maxRSS / 1024);
  return `${rowName(row)}, seed ${row.seed}: ${choices.classes.length} classes, ${plan.served} of ${plan.asked} valves, ${gap}; ${times}; most memory so far ${memory} MB; ${JSON.stringify(plan.effort)}`;
}
