import { describe, expect, it } from 'vitest';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

async function yard() {
  const { raw } = (await demoHouseContext('yard')).database;
  const serial = String(raw.prepare("SELECT min(serial) FROM unit WHERE state = 'ready'").pluck().get());
  raw.exec("INSERT INTO booking (id, number, state) VALUES (1, 'B-1', 'held')");
  for (const id of [1, 2])
    raw.exec(`INSERT INTO transfer (id, number, from_depot, to_depot, state, sent_on, due_on, sent_by_id, sent_by)
      VALUES (${id}, 'T-${id}', 'VEN', 'HAL', 'on the way', '2026-03-10', '2026-03-12', 'u', 'U')`);
  const book = (starts: string, ends: string, free: string) =>
    raw
      .prepare(
        'INSERT INTO booking_unit (booking_id, unit_serial, starts_on, ends_before, free_again_on) VALUES (1, ?, ?, ?, ?)',
      )
      .run(serial, starts, ends, free);
  const send = (transfer = 1, active = 1) =>
    raw
      .prepare(
        "INSERT INTO transfer_unit (transfer_id, unit_serial, sent_on, due_on, active) VALUES (?, ?, '2026-03-10', '2026-03-12', ?)",
      )
      .run(transfer, serial, active);
  return { raw, serial, book, send };
}

describe('the database itself refuses', () => {
  it('any change to the history of a unit or of a shelf', async () => {
    const { raw } = await yard();
    expect(Number(raw.prepare('SELECT count(*) FROM unit_event').pluck().get())).toBeGreaterThan(400);
    expect(() => raw.exec("UPDATE unit_event SET who = 'nobody'")).toThrow('only added to');
    expect(() => raw.exec('DELETE FROM unit_event')).toThrow('only added to');
    raw.exec(`INSERT INTO counted_event (model_number, depot, at, who_id, who, before, after, reason)
      VALUES ((SELECT min(number) FROM model), 'VEN', 'now', 'u', 'U', 1, 2, 'bought')`);
    expect(() => raw.exec('UPDATE counted_event SET after = 3')).toThrow('only added to');
    expect(() => raw.exec('DELETE FROM counted_event')).toThrow('only added to');
  });

  it('a unit on two transfers at once, until the first has arrived', async () => {
    const { raw, send } = await yard();
    send(1);
    expect(() => send(2)).toThrow('on its way already');
    raw.exec('UPDATE transfer_unit SET active = 0');
    expect(() => send(2)).not.toThrow();
  });

  it('sending a unit over days on which a booking holds it, turnaround included', async () => {
    const { raw, book, send } = await yard();
    book('2026-03-05', '2026-03-10', '2026-03-11');
    expect(() => send()).toThrow('booked on these dates already');
    raw.exec("UPDATE booking_unit SET state = 'released'");
    expect(() => send()).not.toThrow();
  });

  it('booking a unit over days on which it is on its way, and moving a booking onto them', async () => {
    const { raw, book, send } = await yard();
    send();
    expect(() => book('2026-03-11', '2026-03-14', '2026-03-15')).toThrow('on its way to another depot');
    book('2026-03-12', '2026-03-14', '2026-03-15');
    expect(() => raw.exec("UPDATE booking_unit SET starts_on = '2026-03-11'")).toThrow('on its way to another depot');
    expect(() => raw.exec("UPDATE booking_unit SET state = 'allocated'")).not.toThrow();
  });

  it('a transfer to the depot it comes from, one that arrives before it is sent, more arriving than were sent, and fewer than none on a shelf', async () => {
    const { raw } = await yard();
    expect(() => raw.exec("UPDATE transfer SET to_depot = 'VEN' WHERE id = 1")).toThrow('transfer_depots');
    expect(() => raw.exec("UPDATE transfer SET due_on = '2026-03-10' WHERE id = 1")).toThrow('transfer_dates');
    raw.exec("INSERT INTO transfer_item (transfer_id, model_number, count) VALUES (1, 'S-303', 5)");
    expect(() => raw.exec('UPDATE transfer_item SET arrived = 6')).toThrow('transfer_item_count');
    expect(() => raw.exec('UPDATE counted_shelf SET count = -1')).toThrow('counted_shelf_count');
  });
});

describe('the number of a counted model', () => {
  it('is always the sum of its shelves', async () => {
    const { raw } = await yard();
    const stock = () => raw.prepare("SELECT counted_stock FROM model WHERE number = 'S-303'").pluck().get();
    expect(stock()).toBe(60);
    raw.exec("UPDATE counted_shelf SET count = count - 3 WHERE model_number = 'S-303' AND depot = 'HAL'");
    expect(stock()).toBe(57);
    raw.exec("INSERT INTO counted_shelf (model_number, depot, count) VALUES ('S-303', 'NEW', 10)");
    expect(stock()).toBe(67);
    raw.exec("DELETE FROM counted_shelf WHERE model_number = 'S-303'");
    expect(stock()).toBe(0);
  });
});
