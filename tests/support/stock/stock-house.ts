/*
 * A small house for the reference model: two models of a few units in one bay, one counted model, two depots; and the comparison with the model.
 */
import { expect } from 'vitest';
import { openDatabase } from '#db/client.ts';
import { createTriggers } from '#db/triggers.ts';
import { addDays } from '#lib/kernel/date-range.ts';
import type { Context } from '#lib/services/context.ts';
import { freePieces, houseFacts, stockQuestion } from '#lib/services/house/house-facts.ts';
import { expireHolds } from '#lib/services/yard/expire-holds.ts';
import { freeCount, freeUnits } from '#lib/stock/free-units.ts';
import { demoHouseContext, HOUSE_DAY } from '../houses/demo-house.ts';
import { dayOf, freePiecesIn, freeSerials, lapse, type World } from './stock-world.ts';

const UNITS_EACH = 4;

export interface House {
  readonly context: () => Context;
  readonly expire: () => void;
  readonly models: readonly string[];
  readonly counted: string;
  readonly bays: Readonly<Record<string, string>>;
}

export interface Start {
  readonly image: Buffer;
  readonly models: readonly string[];
  readonly counted: string;
  readonly bays: Readonly<Record<string, string>>;
}

/** The demo house without any models but two of a few units and one that is counted; one of them falls due for inspection soon. */
export async function smallHouse(): Promise<Start> {
  const { database } = await demoHouseContext('administrator');
  const { raw } = database;
  const bays = Object.fromEntries(
    ['VEN', 'HAL'].map((depot) => [
      depot,
      String(raw.prepare('SELECT min(code) FROM bay WHERE depot = ?').pluck().get(depot)),
    ]),
  );
  const models = raw
    .prepare('SELECT model_number FROM unit GROUP BY model_number HAVING count(*) >= ? LIMIT 2')
    .pluck()
    .all(UNITS_EACH)
    .map(String);
  const counted = String(raw.prepare('SELECT model_number FROM counted_shelf LIMIT 1').pluck().get());
  raw.pragma('foreign_keys = OFF');
  const keep = models.map(
    (model) =>
      `SELECT serial FROM (SELECT serial FROM unit WHERE model_number = '${model}' ORDER BY serial LIMIT ${UNITS_EACH})`,
  );
  raw.exec(`DELETE FROM unit WHERE serial NOT IN (${keep.join(' UNION ')});
    UPDATE unit SET state = 'ready', depot = 'VEN', bay = '${bays.VEN}', inspection_due_on = NULL, calibration_due_on = NULL;
    UPDATE unit SET inspection_due_on = '${addDays(HOUSE_DAY, 20)}' WHERE serial = (SELECT max(serial) FROM unit);
    DELETE FROM counted_shelf;
    DROP TRIGGER model_kept_delete;
    DELETE FROM model WHERE number NOT IN (${[...models, counted].map((model) => `'${model}'`).join(', ')});
    DELETE FROM rate_card WHERE model_number NOT IN (SELECT number FROM model);
    INSERT INTO counted_shelf (model_number, depot, count) VALUES ('${counted}', 'VEN', 8), ('${counted}', 'HAL', 2)`);
  createTriggers(raw);
  raw.exec('VACUUM');
  raw.pragma('foreign_keys = ON');
  return { image: raw.serialize(), models, counted, bays };
}

/** A fresh house and a fresh model of it. */
export function startOf({ image, models, counted, bays }: Start): { readonly model: World; readonly real: House } {
  const database = openDatabase(image);
  const actor = { id: 'model', name: 'Model', role: 'administrator' } as const;
  const units = database.raw
    .prepare('SELECT serial, model_number AS model, depot, bay, state, inspection_due_on AS dueOn FROM unit')
    .all() as World['units'];
  const model: World = {
    now: new Date(`${HOUSE_DAY}T08:00:00Z`),
    turnaround: houseFacts({ database, now: () => new Date(`${HOUSE_DAY}T08:00:00Z`), actor }).turnaroundDays,
    units,
    bookings: [],
    rows: [],
    pieces: [],
    transfers: [],
    shelves: new Map([
      ['VEN', 8],
      ['HAL', 2],
    ]),
  };
  const context = (): Context => ({ database, now: () => model.now, actor });
  return { model, real: { context, expire: () => expireHolds(context()), models, counted, bays } };
}

/** Windows that every comparison asks about, in days from today: the first day and how many. */
const ASKED = [
  [0, 1],
  [1, 4],
  [6, 2],
  [12, 9],
] as const;

export function compare(world: World, house: House): void {
  lapse(world);
  const context = house.context();
  for (const [from, days] of ASKED) {
    const starts_on = addDays(dayOf(world), from);
    const window = { starts_on, ends_before: addDays(starts_on, days) };
    const right = freeSerials(world, window);
    const question = stockQuestion(context, { window });
    const counts = freeCount(question);
    expect(
      freeUnits(question)
        .map(({ serial }) => serial)
        .toSorted(),
      `free ${JSON.stringify(window)}`,
    ).toEqual([...right].toSorted());
    for (const model of house.models) {
      const many = world.units.filter((unit) => unit.model === model && right.has(unit.serial)).length;
      expect(counts.get(model) ?? 0, `${model} ${JSON.stringify(window)}`).toBe(many);
    }
    expect(counts.get(house.counted), `counted ${JSON.stringify(window)}`).toBe(freePiecesIn(world, window));
  }
  const one = { starts_on: dayOf(world), ends_before: addDays(dayOf(world), 5) };
  expect(freePieces(context, { window: one })[house.counted]).toBe(freePiecesIn(world, one));
  house.expire();
  expect(rowsIn(context)).toEqual(rowsOfWorld(world));
  expect(bookingsIn(context)).toEqual(world.bookings.map(({ number, state }) => `${number} ${state}`).toSorted());
}

function rowsIn({ database }: Context): readonly string[] {
  return database.raw
    .prepare(
      `SELECT number || ' ' || unit_serial || ' ' || starts_on || ' ' || ends_before || ' ' || booking_unit.state
       FROM booking_unit JOIN booking ON booking.id = booking_id`,
    )
    .pluck()
    .all()
    .map(String)
    .toSorted();
}

function rowsOfWorld({ rows }: World): readonly string[] {
  return rows
    .map(
      ({ booking, serial, starts_on, ends_before, state }) =>
        `${booking} ${serial} ${starts_on} ${ends_before} ${state}`,
    )
    .toSorted();
}

function bookingsIn({ database }: Context): readonly string[] {
  return database.raw.prepare("SELECT number || ' ' || state FROM booking").pluck().all().map(String).toSorted();
}
