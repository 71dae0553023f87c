/*
 * The demo house as plain data: models, units, counted stock, house facts, customers and enquiries.
 * Invariant: everything in it is invented; reading it changes nothing.
 * Not here: writing it into the database (lib/services/house/prepare-house.ts).
 * Read next: units.ts, equipment/, enquiries/.
 */
import { readFileSync } from 'node:fs';
import { type DemoContact, type DemoCustomer, parseContacts, parseCustomers } from '#lib/contracts/customer.ts';
import { parseEnquiryFile } from '#lib/contracts/enquiry-file.ts';
import { parseModels } from '#lib/contracts/equipment.ts';
import { type HouseFacts, parseHouse } from '#lib/contracts/house.ts';
import { type DemoVisit, parseDemoVisits } from '#lib/contracts/visits.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { Result } from '#lib/kernel/result.ts';
import type { Unit } from '#lib/stock/unit.ts';
import { makeShelves } from './stock.ts';
import { makeUnits } from './units.ts';

const EQUIPMENT_FILES = ['drives', 'heads', 'adapters', 'extensions', 'restraints', 'options', 'accessories'] as const;

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
  return readOrStop(parseModels(EQUIPMENT_FILES.flatMap((name) => readJson(`equipment/${name}.json`))));
}

/** Checks fall due relative to the anchor, the day on which the demo house is loaded. */
export function demoUnits({ anchor }: { readonly anchor: IsoDate }): readonly Unit[] {
  return makeUnits({ models: demoModels(), anchor });
}

/** Pieces of each counted model over both depots. */
export function demoCountedStock(): Readonly<Record<string, number>> {
  const totals: Record<string, number> = {};
  for (const { model, count } of makeShelves(demoModels())) totals[model] = (totals[model] ?? 0) + count;
  return totals;
}

export function demoHouse(): HouseFacts {
  return readOrStop(parseHouse(demoHouseJson()));
}

/** As it is stored; demoHouse reads it. */
export function demoHouseJson(): unknown {
  return readJson('house.json');
}

export function demoCustomers(): readonly DemoCustomer[] {
  return readOrStop(parseCustomers(readJson('customers.json')));
}

export function demoContacts(): readonly DemoContact[] {
  return readOrStop(parseContacts(readJson('contacts.json')));
}

export function demoEnquiries(): readonly DemoEnquiry[] {
  return DEMO_ENQUIRIES.map((id) => {
    const { list, ...enquiry } = readOrStop(parseEnquiryFile(readJson(`enquiries/${id}.json`)));
    return { ...enquiry, listName: list, listText: readText(`enquiries/${list}`) };
  });
}

/** What crews found at demo valves on visits before the house was loaded. */
export function demoVisits(): readonly DemoVisit[] {
  return readOrStop(parseDemoVisits(readJson('visits.json')));
}

/** Demo data that cannot be read is a slip of whoever changed it. */
function readOrStop<Value>(result: Result<Value>): Value {
  invariant(result.ok, result.ok ? '' : result.reason.sentence);
  return result.value;
}

function readJson(path: string): unknown {
  return JSON.parse(readText(path));
}

function readText(path: string): string {
  return readFileSync(new URL(path, import.meta.url), 'utf8');
}
