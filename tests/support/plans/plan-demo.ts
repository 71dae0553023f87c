import { parseSite } from '#lib/contracts/site.ts';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { FleetPlan } from '#lib/equipment/choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import { proposeMapping } from '#lib/intake/propose-mapping.ts';
import { readTables } from '#lib/intake/read-table.ts';
import { type Taken, takeRows } from '#lib/intake/take-rows.ts';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import type { Result } from '#lib/kernel/result.ts';
import type { Unserved } from '#lib/kits/find-choices.ts';
import { partsOf } from '#lib/kits/parts-of.ts';
import { bestRate } from '#lib/pricing/best-rate.ts';
import { freeCount } from '#lib/stock/free-units.ts';
import { minutes } from '#lib/units/quantity.ts';
import { type DemoEnquiry, demoCountedStock, demoHouse, demoModels, demoUnits } from '#seeds/load.ts';
import { checkedAssembly, checkedChoices, checkedPlan } from '../checked.ts';

const ANCHOR = '2030-06-01';
const STARTS_ON = '2030-06-03';

export interface PlannedDemo {
  readonly taken: Taken;
  readonly plan: FleetPlan;
  readonly unserved: readonly Unserved[];
  readonly assemblies: readonly Assembly[];
}

/** The whole chain from a demo list to its cheapest plan, out of what the demo house has free. */
export async function planDemo(enquiry: DemoEnquiry): Promise<PlannedDemo> {
  const models = demoModels();
  const house = demoHouse();
  const site = valueIn(parseSite(enquiry.site, { startsOn: STARTS_ON }));
  const taken = await takeList(enquiry);
  const lineDuties = taken.lines.map(({ line }) => ({ line, duty: assessDuty({ line, site }) }));
  const choices = checkedChoices({
    lines: lineDuties,
    site,
    models,
    constraints: { lockedParts: [], excludedParts: [], pins: [] },
  });
  const plan = await checkedPlan({
    classes: choices.classes,
    items: fleetItems({ models, days: site.days, crews: site.crews, turnaroundDays: house.turnaroundDays }),
    crews: site.crews,
    secondsPerCrew: minutes(site.shiftHours * 60 * site.days),
    labour_minor_per_hour: house.labourMinorPerHour,
    preference: 'cost',
    budget: { seconds: 60, nodes: 4000 },
  });
  const assemblies = plan.work.map((served) => {
    const tag = choices.classes.find(({ id }) => id === served.classId)?.tags[0];
    const lineDuty = lineDuties.find(({ line }) => line.tag === tag);
    if (lineDuty === undefined) throw new Error(`Class ${served.classId} has no line.`);
    return checkedAssembly({ lineDuty, site, models, parts: partsOf({ classId: served.classId, served, choices }) });
  });
  return { taken, plan, unserved: choices.unserved, assemblies };
}

async function takeList({ listName, listText }: DemoEnquiry): Promise<Taken> {
  const tables = valueIn(await readTables({ bytes: new TextEncoder().encode(listText), fileName: listName }));
  const [table] = tables;
  if (table === undefined) throw new Error(`${listName} holds no table.`);
  return takeRows({ table, mapping: proposeMapping(table) });
}

interface Stock {
  readonly models: readonly Model[];
  readonly days: number;
  readonly crews: number;
  readonly turnaroundDays: number;
}

function fleetItems({ models, days, crews, turnaroundDays }: Stock) {
  const free = freeCount({
    units: demoUnits({ anchor: ANCHOR }),
    bookings: [],
    window: rangeOfDays(STARTS_ON, days),
    turnaroundDays,
  });
  const counted = demoCountedStock();
  return models.map((model) => ({
    id: model.number,
    cost_minor: bestRate({ rates: model.rates, days }).total_minor,
    mass: model.mass,
    pieces: model.counted ? 0 : 1,
    free: model.madeToOrder ? crews : (counted[model.number] ?? free.get(model.number) ?? 0),
  }));
}

function valueIn<Value>(result: Result<Value>): Value {
  if (!result.ok) throw new Error(result.reason.sentence);
  return result.value;
}
