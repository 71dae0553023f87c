/*
 * The demo house as plain data: models, units, counted stock, house facts, customers and enquiries.
 * Invariant: everything in it is invented; reading it changes nothing.
 * Not here: writing it into the database (lib/services/prepare-house.ts).
 * Read next: units.ts, equipment/, enquiries/.
 */
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { parseModels } from '#lib/contracts/equipment.ts';
import { type HouseFacts, type HouseJson, houseSchema, parseHouse } from '#lib/contracts/house.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { Unit } from '#lib/stock/unit.ts';
import { makeUnits } from './units.ts';

const EQUIPMENT_FILES = ['drives', 'heads', 'adapters', 'extensions', 'restraints', 'options', 'accessories'] as const;

/** Pieces of each counted model on the shelves of a depot; nobody gives them serial numbers. */
const COUNTED_PIECES = 60;

const customerSchema = z.strictObject({
  code: z.string(),
  name: z.string(),
  address: z.array(z.string()),
  contact: z.string(),
  email: z.string(),
  /** Id of a delivery band of the house. */
  delivery_band: z.string(),
  account: z.enum(['credit', 'new']),
  since: z.string(),
});
export type DemoCustomer = z.infer<typeof customerSchema>;

const enquirySchema = z.strictObject({
  id: z.string(),
  title: z.string(),
  /** Code of a demo customer. */
  customer: z.string(),
  list: z.string(),
  site: z.record(z.string(), z.unknown()),
});

export interface DemoEnquiry {
  readonly id: string;
  readonly title: string;
  readonly customer: string;
  /** As lib/contracts/site.ts reads it; start and length of the hire are left to whoever loads it. */
  readonly site: Readonly<Record<string, unknown>>;
  readonly listName: string;
  readonly listText: string;
}

export const DEMO_ENQUIRIES = [
  'buried-mains',
  'tank-terminal',
  'refinery-shutdown',
  'ship',
  'dam',
  'treatment-works',
  'contractor',
] as const;

export function demoModels(): readonly Model[] {
  const entries = EQUIPMENT_FILES.flatMap((name) => z.array(z.unknown()).parse(readJson(`equipment/${name}.json`)));
  const parsed = parseModels(entries);
  invariant(parsed.ok, parsed.ok ? '' : parsed.reason.sentence);
  return parsed.value;
}

/** Checks fall due relative to the anchor, the day on which the demo house is loaded. */
export function demoUnits({ anchor }: { readonly anchor: IsoDate }): readonly Unit[] {
  return makeUnits({ models: demoModels(), anchor });
}

export function demoCountedStock(): Readonly<Record<string, number>> {
  return Object.fromEntries(
    demoModels()
      .filter((model) => model.counted)
      .map((model) => [model.number, COUNTED_PIECES]),
  );
}

export function demoHouse(): HouseFacts {
  const parsed = parseHouse(demoHouseJson());
  invariant(parsed.ok, parsed.ok ? '' : parsed.reason.sentence);
  return parsed.value;
}

/** As it is stored. */
export function demoHouseJson(): HouseJson {
  const json = readJson('house.json');
  houseSchema.parse(json);
  return json as HouseJson;
}

export function demoCustomers(): readonly DemoCustomer[] {
  return z.array(customerSchema).parse(readJson('customers.json'));
}

export function demoEnquiries(): readonly DemoEnquiry[] {
  return DEMO_ENQUIRIES.map((id) => {
    const { list, ...enquiry } = enquirySchema.parse(readJson(`enquiries/${id}.json`));
    return { ...enquiry, listName: list, listText: readText(`enquiries/${list}`) };
  });
}

function readJson(path: string): unknown {
  return JSON.parse(readText(path));
}

function readText(path: string): string {
  return readFileSync(new URL(path, import.meta.url), 'utf8');
}
