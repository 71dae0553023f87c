import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openDatabase } from '#db/client.ts';
import { migrateDatabase } from '#db/migrate.ts';
import { TRIGGER_NAMES } from '#db/triggers.ts';
import { prepareHouse } from '#lib/services/house/prepare-house.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

async function withBooking() {
  const { database } = await demoHouseContext();
  database.raw.exec("INSERT INTO booking (id, number, state) VALUES (1, 'B-1', 'held'), (2, 'B-2', 'held')");
  const insert = database.raw.prepare(
    `INSERT INTO booking_unit (booking_id, unit_serial, starts_on, ends_before, free_again_on)
     VALUES (?, (SELECT min(serial) FROM unit), ?, ?, ?)`,
  );
  insert.run(1, '2026-03-10', '2026-03-15', '2026-03-16');
  return { raw: database.raw, insert };
}

describe('the database itself refuses', () => {
  it.each([
    ['the same days', '2026-03-10', '2026-03-15', '2026-03-16'],
    ['days inside', '2026-03-11', '2026-03-12', '2026-03-13'],
    ['days around', '2026-03-01', '2026-03-30', '2026-03-31'],
    ['the turnaround day', '2026-03-15', '2026-03-20', '2026-03-21'],
    ['a turnaround that runs into it', '2026-03-05', '2026-03-10', '2026-03-11'],
  ])('two bookings of one unit on %s', async (_name, starts, ends, free) => {
    const { insert } = await withBooking();
    expect(() => insert.run(2, starts, ends, free)).toThrow('booked on these dates already');
  });

  it('nothing where one hire begins on the day the unit is free again', async () => {
    const { insert } = await withBooking();
    expect(() => insert.run(2, '2026-03-16', '2026-03-20', '2026-03-21')).not.toThrow();
    expect(() => insert.run(2, '2026-03-05', '2026-03-09', '2026-03-10')).not.toThrow();
  });

  it('moving a booking onto another one', async () => {
    const { raw, insert } = await withBooking();
    insert.run(2, '2026-04-01', '2026-04-05', '2026-04-06');
    expect(() => raw.exec("UPDATE booking_unit SET starts_on = '2026-03-12' WHERE booking_id = 2")).toThrow(
      'booked on these dates already',
    );
  });

  it('nothing where the unit was released, swapped, checked in or lost before', async () => {
    const { raw, insert } = await withBooking();
    for (const state of ['released', 'swapped', 'checked', 'lost']) {
      raw.exec(`UPDATE booking_unit SET state = '${state}'`);
      expect(() => insert.run(2, '2026-03-10', '2026-03-15', '2026-03-16')).not.toThrow();
    }
    expect(() => raw.exec("UPDATE booking_unit SET state = 'held'")).toThrow('booked on these dates already');
  });

  it('more counted pieces on any one day than the house has, and nothing that fits', async () => {
    const { raw } = await withBooking();
    raw.exec('UPDATE model SET counted_stock = 10 WHERE number = (SELECT min(number) FROM model)');
    const item =
      raw.prepare(`INSERT INTO booking_item (booking_id, model_number, count, starts_on, ends_before, free_again_on)
      VALUES (2, (SELECT min(number) FROM model), ?, ?, ?, ?)`);
    item.run(6, '2026-03-01', '2026-03-05', '2026-03-06');
    item.run(6, '2026-03-06', '2026-03-10', '2026-03-11');
    expect(() => item.run(5, '2026-02-20', '2026-03-07', '2026-03-08')).toThrow('not so many are there');
    expect(() => item.run(4, '2026-02-20', '2026-03-07', '2026-03-08')).not.toThrow();
    expect(() => item.run(1, '2026-03-05', '2026-03-06', '2026-03-07')).toThrow('not so many are there');
    expect(() => raw.exec('UPDATE booking_item SET count = 7 WHERE count = 6')).toThrow('not so many are there');
    raw.exec('UPDATE model SET counted_stock = 2 WHERE number = (SELECT min(number) FROM model)');
    expect(() => raw.exec("UPDATE booking_item SET state = 'out'")).not.toThrow();
    expect(() => raw.exec("UPDATE booking_item SET state = 'checked'")).not.toThrow();
    expect(() => raw.exec("UPDATE booking_item SET state = 'out'")).toThrow('not so many are there');
  });

  it('a booking that ends and still holds, one that holds again after its end, and states that there are not', async () => {
    const { raw, insert } = await withBooking();
    for (const state of ['cancelled', 'lapsed', 'closed'])
      expect(() => raw.exec(`UPDATE booking SET state = '${state}' WHERE id = 1`)).toThrow('holds nothing');
    expect(() => raw.exec("UPDATE booking SET state = 'away' WHERE id = 1")).toThrow('no such state');
    expect(() => raw.exec("INSERT INTO booking (id, number, state) VALUES (3, 'B-3', 'away')")).toThrow(
      'no such state',
    );
    expect(() => raw.exec("UPDATE booking_unit SET state = 'gone'")).toThrow('cannot stand so');
    raw.exec("UPDATE booking_unit SET state = 'released'; UPDATE booking SET state = 'cancelled' WHERE id = 1");
    expect(() => raw.exec("UPDATE booking_unit SET state = 'held'")).toThrow('cannot stand so');
    expect(() => insert.run(1, '2026-03-20', '2026-03-25', '2026-03-26')).toThrow('cannot stand so');
  });

  it('any change to the history of a booking, its extensions and its off-hire notices', async () => {
    const { raw } = await withBooking();
    raw.exec(`INSERT INTO booking_move (booking_id, what, from_state, to_state, at, who_id, who)
        VALUES (1, 'held', 'held', 'held', 'now', 'u1', 'One');
      INSERT INTO booking_extension (booking_id, ended_before, ends_before, serials_json, at, who_id, who)
        VALUES (1, '2026-03-15', '2026-03-17', '[]', 'now', 'u1', 'One');
      INSERT INTO off_hire_notice (id, number, booking_id, noticed_at, said_by, at, who_id, who)
        VALUES (1, 'N-1', 1, 'now', 'R. Dunlin', 'now', 'u1', 'One');
      INSERT INTO off_hire_unit (notice_id, booking_unit_id) VALUES (1, 1);`);
    for (const table of ['booking_move', 'booking_extension', 'off_hire_notice'])
      expect(() => raw.exec(`UPDATE ${table} SET at = 'later'`), table).toThrow('only added to');
    for (const table of ['booking_move', 'off_hire_notice', 'off_hire_unit'])
      expect(() => raw.exec(`DELETE FROM ${table}`), table).toThrow('only added to');
    expect(() => raw.exec('UPDATE off_hire_unit SET booking_unit_id = 2')).toThrow('only added to');
    expect(() => raw.exec('INSERT INTO off_hire_unit (notice_id, booking_unit_id) VALUES (1, 1)')).toThrow('UNIQUE');
  });

  it('an approval by the person who asked, a second decision, and taking any away', async () => {
    const { database } = await demoHouseContext();
    const { raw } = database;
    const ask = (id: number) =>
      raw.exec(`INSERT INTO discount_approval (id, enquiry_id, asked_json, state, reason, asked_by, asked_by_name, asked_at)
        VALUES (${id}, 1, '{}', 'asked', 'frame agreement', 'u1', 'One', 'now')`);
    ask(1);
    expect(() => raw.exec("UPDATE discount_approval SET state = 'approved', decided_by = 'u1'")).toThrow(
      'another person',
    );
    expect(() => raw.exec("UPDATE discount_approval SET asked_json = '[]'")).toThrow('decided once');
    raw.exec("UPDATE discount_approval SET state = 'approved', decided_by = 'u2'");
    expect(() => raw.exec("UPDATE discount_approval SET state = 'refused'")).toThrow('decided once');
    expect(() => raw.exec("UPDATE discount_approval SET state = 'withdrawn'")).not.toThrow();
    expect(() => raw.exec("UPDATE discount_approval SET state = 'approved', decided_by = 'u2'")).toThrow(
      'decided once',
    );
    expect(() => raw.exec('DELETE FROM discount_approval')).toThrow('kept');
  });

  it('any change to an issued quote but its state, and any change to an issued paper', async () => {
    const { database } = await demoHouseContext();
    database.raw.exec(`INSERT INTO quote (id, enquiry_id, number, revision, state, issued_on, valid_until, total_minor, currency, frozen_json)
      VALUES (1, 1, 'Q-1', 'A', 'issued', '2026-03-02', '2026-04-01', 100, 'EUR', '{}')`);
    database.raw.exec(
      "INSERT INTO paper (quote_id, kind, bytes, sha256, created_at) VALUES (1, 'quote', x'00', 'h', 'now')",
    );
    expect(() => database.raw.exec('UPDATE quote SET total_minor = 1')).toThrow('frozen');
    expect(() => database.raw.exec("UPDATE quote SET frozen_json = '[]'")).toThrow('frozen');
    expect(() => database.raw.exec('DELETE FROM quote')).toThrow('frozen');
    expect(() => database.raw.exec("UPDATE paper SET bytes = x'01'")).toThrow('frozen');
    expect(() => database.raw.exec('DELETE FROM paper')).toThrow('frozen');
    expect(() => database.raw.exec("UPDATE quote SET state = 'accepted'")).not.toThrow();
  });
});

describe('migrating', () => {
  const folder = mkdtempSync(join(tmpdir(), 'kitwright-migrate-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('a filled house again keeps every row of every table and every trigger, and seeds nothing twice', async () => {
    const databasePath = join(folder, 'house.sqlite');
    await prepareHouse({ databasePath, now: new Date('2026-03-02T08:00:00Z') });
    const before = countsOf(databasePath);
    expect(Object.values(before).reduce((sum, count) => sum + count, 0)).toBeGreaterThan(500);
    await prepareHouse({ databasePath, now: new Date('2026-05-02T08:00:00Z') });
    expect(countsOf(databasePath)).toEqual(before);
  });

  it('makes every trigger anew and leaves foreign keys on', async () => {
    const { database } = await demoHouseContext();
    for (const name of TRIGGER_NAMES) database.raw.exec(`DROP TRIGGER ${name}`);
    migrateDatabase(database);
    const names = database.raw
      .prepare("SELECT name FROM sqlite_master WHERE type = 'trigger' ORDER BY name")
      .pluck()
      .all();
    expect(names).toEqual([...TRIGGER_NAMES].sort());
    expect(database.raw.pragma('foreign_keys', { simple: true })).toBe(1);
  });

  function countsOf(path: string): Readonly<Record<string, number>> {
    const { raw } = openDatabase(path);
    const tables = raw.prepare("SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name").pluck().all();
    const counts = tables.map(
      (name) =>
        [
          String(name),
          Number(
            raw
              .prepare(`SELECT count(*) FROM "${String(name)}"`)
              .pluck()
              .get(),
          ),
        ] as const,
    );
    raw.close();
    return Object.fromEntries(counts);
  }
});
