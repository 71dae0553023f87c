/*
 * Reads the house, its models and what is free of them, in the forms the core understands.
 * Invariant: stored JSON is parsed by its contract every time it is read.
 * Not here: what the facts decide.
 * Read next: ../contracts/equipment.ts, ../stock/.
 */
import { activeBookingUnits, activeBookingUnitsBeside } from '#db/queries/bookings.ts';
import { listModels, listUnits } from '#db/queries/equipment.ts';
import { readHouse } from '#db/queries/house.ts';
import { parseModels } from '#lib/contracts/equipment.ts';
import { type HouseFacts, parseHouse } from '#lib/contracts/house.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { DateRange } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { freeCount } from '#lib/stock/free-units.ts';
import type { StockQuestion } from '#lib/stock/unit.ts';
import type { Context } from './context.ts';

export function houseFacts(context: Context): HouseFacts {
  const text = readHouse(context.database.db);
  invariant(text !== undefined, 'The house has no facts yet: run npm start once, it loads them.');
  const parsed = parseHouse(JSON.parse(text));
  invariant(parsed.ok, parsed.ok ? '' : parsed.reason.sentence);
  return parsed.value;
}

let parsedModels: { readonly key: string; readonly models: readonly Model[] } | undefined;

/** Models change rarely and parsing them takes milliseconds: the last parse is kept while the rows are the same. */
export function houseModels(context: Context): readonly Model[] {
  const key = `[${listModels(context.database.db)
    .map((row) => row.facts_json)
    .join(',')}]`;
  if (parsedModels?.key === key) return parsedModels.models;
  const parsed = parseModels(JSON.parse(key));
  invariant(parsed.ok, parsed.ok ? '' : parsed.reason.sentence);
  parsedModels = { key, models: parsed.value };
  return parsed.value;
}

interface StockAsked {
  readonly window: DateRange;
  /** Its own booked units stand free to an enquiry that is planned anew. */
  readonly enquiryId?: number;
}

/** What stock decides on: units, bookings, window and turnaround. */
export function stockQuestion(context: Context, { window, enquiryId }: StockAsked): StockQuestion {
  const db = context.database.db;
  const booked = enquiryId === undefined ? activeBookingUnits(db) : activeBookingUnitsBeside(db, enquiryId);
  return {
    units: listUnits(db).map((row) => ({
      serial: row.serial,
      model: row.model_number,
      depot: row.depot,
      bay: row.bay,
      state: row.state,
      inspectionDueOn: row.inspection_due_on,
      calibrationDueOn: row.calibration_due_on,
    })),
    bookings: booked.map((row) => ({
      serial: row.unit_serial,
      window: { starts_on: row.starts_on, ends_before: row.ends_before },
    })),
    window,
    turnaroundDays: houseFacts(context).turnaroundDays,
  };
}

/** How many pieces of each model are free over the whole window, counted stock included. */
export function freePieces(context: Context, asked: StockAsked): Readonly<Record<string, number>> {
  const counted = listModels(context.database.db).filter((row) => row.counted_stock !== null);
  return {
    ...Object.fromEntries(freeCount(stockQuestion(context, asked))),
    ...Object.fromEntries(counted.map((row) => [row.number, row.counted_stock ?? 0])),
  };
}
