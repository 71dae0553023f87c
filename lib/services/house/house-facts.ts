/*
 * Reads the house, its models and what is free of them, in the forms the core understands, as they hold on a day.
 * Invariant: stored JSON is parsed by its contract every time it is read; a hire is priced by the rates and prices that hold on its first day.
 * Not here: what the facts decide.
 * Read next: ../../contracts/equipment.ts, ../../equipment/rate-on.ts, ../../stock/.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingUnitRow, engagedBookingItems, engagedBookingUnits } from '#db/queries/bookings.ts';
import { findModel, listModels, listUnits } from '#db/queries/equipment.ts';
import { readHouse } from '#db/queries/house.ts';
import { listHousePrices, listRateCards } from '#db/queries/rates.ts';
import { listShelves } from '#db/queries/stock.ts';
import { unitsOnTheWay } from '#db/queries/transfers.ts';
import { bookingNumbers, depotsOfItems } from '#db/queries/unit-bookings.ts';
import { parseModels } from '#lib/contracts/equipment.ts';
import { type HouseFacts, parseHouse } from '#lib/contracts/house.ts';
import type { Model } from '#lib/equipment/model.ts';
import { heldOn } from '#lib/equipment/rate-on.ts';
import type { DateRange, IsoDate } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { toMinor } from '#lib/money/money.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { isBookedUnitState } from '#lib/stock/booking-life.ts';
import { mostHeld } from '#lib/stock/counted-holds.ts';
import { freeCount, withTurnaround } from '#lib/stock/free-units.ts';
import { engagedDays } from '#lib/stock/hold.ts';
import { daysOnTheWay } from '#lib/stock/transfer-days.ts';
import type { CountedStock, StockQuestion, Unit, UnitBooking } from '#lib/stock/unit.ts';
import { sameList, withRates } from './kept-models.ts';

/** The house with the prices that hold on a day: the first day of hire where something is priced, today without one. */
export function houseFacts(context: Context, on: IsoDate = today(context)): HouseFacts {
  const db = context.database.db;
  const text = readHouse(db);
  invariant(text !== undefined, 'The house has no facts yet: run npm start once, it loads them.');
  const prices = heldOn(listHousePrices(db), on);
  return parsedFacts({ text, prices: prices?.prices_json ?? '{}' });
}

interface HouseTexts {
  readonly text: string;
  readonly prices: string;
}

let parsedHouse: (HouseTexts & { readonly house: HouseFacts }) | undefined;

/** The house is asked for many times in one use case and parsing it takes milliseconds: the last parse is kept while the texts are the same. */
function parsedFacts({ text, prices }: HouseTexts): HouseFacts {
  if (parsedHouse?.text === text && parsedHouse.prices === prices) return parsedHouse.house;
  const parsed = parseHouse({ ...JSON.parse(text), ...JSON.parse(prices) });
  invariant(parsed.ok, parsed.ok ? '' : parsed.reason.sentence);
  parsedHouse = { text, prices, house: parsed.value };
  return parsed.value;
}

/** The models that may be chosen, with the rates that hold on a day: the first day of hire, today without one. */
export function houseModels(context: Context, on: IsoDate = today(context)): readonly Model[] {
  const retired = new Set(
    listModels(context.database.db).flatMap((row) => (row.retired_on === null ? [] : [row.number])),
  );
  const models = knownModels(context, on);
  return sameList(retired.size === 0 ? models : models.filter(({ number }) => !retired.has(number)));
}

/** The same with those that were retired: for names, and for plans that were made before. */
export function knownModels(context: Context, on: IsoDate = today(context)): readonly Model[] {
  const { db } = context.database;
  const models = parsedCatalogue(
    `[${listModels(db)
      .map((row) => row.facts_json)
      .join(',')}]`,
  );
  const cards = listRateCards(db);
  if (cards.length === 0) return models;
  return models.map((model): Model => {
    const held = heldOn(
      cards.filter(({ model_number }) => model_number === model.number),
      on,
    );
    if (held === undefined) return model;
    const rates = {
      day_minor: toMinor(held.day_minor),
      week_minor: toMinor(held.week_minor),
      four_weeks_minor: toMinor(held.four_weeks_minor),
      minimum_days: held.minimum_days,
    };
    return withRates(model, rates);
  });
}

let parsedModels: { readonly key: string; readonly models: readonly Model[] } | undefined;

/** Models change rarely and parsing them takes milliseconds: the last parse is kept while the rows are the same. */
function parsedCatalogue(key: string): readonly Model[] {
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
  const numbers = bookingNumbers(db);
  return {
    units: houseUnits(db),
    bookings: [
      ...engagedBookingUnits(db, { at: timestamp(context), besideEnquiry: enquiryId }).flatMap((row) =>
        unitBookingOf({ row, number: numbers.get(row.booking_id) ?? '', today: today(context) }),
      ),
      ...onTheWay(context),
    ],
    counted: countedStock(context, enquiryId),
    window,
    turnaroundDays: houseFacts(context).turnaroundDays,
  };
}

export function houseUnits(db: DbOrTx): readonly Unit[] {
  return listUnits(db).map((row) => ({
    serial: row.serial,
    model: row.model_number,
    depot: row.depot,
    bay: row.bay,
    state: row.state,
    inspectionDueOn: row.inspection_due_on,
    calibrationDueOn: row.calibration_due_on,
  }));
}

function countedStock(context: Context, besideEnquiry: number | undefined): CountedStock {
  const db = context.database.db;
  const depots = depotsOfItems(db);
  return {
    shelves: listShelves(db).map(({ model_number, depot, count }) => ({ model: model_number, depot, count })),
    holds: engagedBookingItems(db, { at: timestamp(context), besideEnquiry }).map((row) => ({
      model: row.model_number,
      depot: depots.get(row.id) ?? '',
      count: row.count,
      days: { starts_on: row.starts_on, ends_before: row.free_again_on },
    })),
  };
}

/** Units between two depots, which are free at neither. */
export function onTheWay(context: Context): readonly UnitBooking[] {
  return unitsOnTheWay(context.database.db).map(({ unit_serial: serial, sent_on: sentOn, due_on: dueOn, number }) => ({
    serial,
    window: daysOnTheWay({ sentOn, dueOn, today: today(context) }),
    why: 'transfer' as const,
    number,
  }));
}

/** How many pieces of each model are free over the whole window, counted stock included. */
export function freePieces(context: Context, asked: StockAsked): Readonly<Record<string, number>> {
  return Object.fromEntries(freeCount(stockQuestion(context, asked)));
}

/** The days on which a row engages its unit; nothing where it holds none any more. */
interface BookedRow {
  readonly row: BookingUnitRow;
  /** Number of the booking, where it is to be told. */
  readonly number?: string;
  readonly today: IsoDate;
}

export function unitBookingOf({ row, number = '', today: day }: BookedRow): readonly UnitBooking[] {
  const { unit_serial: serial, starts_on, ends_before, free_again_on: freeAgainOn, expected_back_on, back_on } = row;
  invariant(isBookedUnitState(row.state), `A unit of a booking cannot be ${row.state}.`);
  const window = engagedDays({
    state: row.state,
    window: { starts_on, ends_before },
    outOn: row.out_on,
    expectedBackOn: expected_back_on,
    backOn: back_on,
    today: day,
  });
  if (window === null) return [];
  const isLate = window.ends_before > ends_before && row.state === 'out';
  const hasLeft = row.state === 'out' || row.state === 'back';
  return [{ serial, window, freeAgainOn, number, hasLeft, ...(isLate ? { lateFrom: ends_before } : {}) }];
}

interface CountedAsked {
  readonly context: Context;
  readonly model: string;
  readonly window: DateRange;
  /** What this booking holds stands free to it. */
  readonly besideBooking: number;
}

/** How many counted pieces of a model are free over a whole window to a booking that holds some of them. */
export function countedFree(db: DbOrTx, { context, model, window, besideBooking }: CountedAsked): number {
  const holds = engagedBookingItems(db, { at: timestamp(context) })
    .filter((row) => row.model_number === model && row.booking_id !== besideBooking)
    .map(({ count, starts_on, free_again_on }) => ({ count, days: { starts_on, ends_before: free_again_on } }));
  const days = withTurnaround({ window, turnaroundDays: houseFacts(context).turnaroundDays });
  return (findModel(db, model)?.counted_stock ?? 0) - mostHeld({ holds, days });
}
