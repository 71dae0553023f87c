import { describe, expect, it } from 'vitest';
import { addDays, rangeOfDays } from '#lib/kernel/date-range.ts';
import type { Context } from '#lib/services/context.ts';
import { freePieces } from '#lib/services/house/house-facts.ts';
import { arriveTransfer } from '#lib/services/stock/arrive-transfer.ts';
import { listHouseTransfers } from '#lib/services/stock/list-transfers.ts';
import { moveUnit } from '#lib/services/stock/move-unit.ts';
import { openUnit } from '#lib/services/stock/open-unit.ts';
import { sendTransfer, type TransferToSend } from '#lib/services/stock/send-transfer.ts';
import { granted } from '#tests/support/granted.ts';
import { bookedHouse, HIRE } from '#tests/support/houses/booked-house.ts';
import { demoHouseContext, HOUSE_DAY } from '#tests/support/houses/demo-house.ts';

const code = (result: { readonly ok: boolean; readonly reason?: { readonly code: string } }) =>
  'reason' in result ? result.reason?.code : 'granted';
const DUE = addDays(HOUSE_DAY, 3);
const ARRIVAL = { units: [], items: [], lost: [] } as const;

function some(context: Context, where: string): { readonly serial: string; readonly model: string } {
  const row = context.database.raw
    .prepare(`SELECT serial, model_number AS model FROM unit WHERE depot = 'VEN' AND ${where} ORDER BY serial LIMIT 1`)
    .get() as { serial: string; model: string };
  return row;
}

function sending(serials: readonly string[]): TransferToSend {
  return { from: 'VEN', to: 'HAL', dueOn: DUE, serials, items: [], note: '' };
}

const free = (context: Context, model: string, from = HOUSE_DAY) =>
  freePieces(context, { window: rangeOfDays(from, 1) })[model] ?? 0;

describe('a transfer', () => {
  it('takes a unit out of both depots until it arrives, and frees it at the other at once', async () => {
    const context = await demoHouseContext('yard');
    const { serial, model } = some(
      context,
      "state = 'ready' AND inspection_due_on IS NULL AND calibration_due_on IS NULL",
    );
    const before = free(context, model);
    const { number } = granted(sendTransfer(context, sending([serial.toLowerCase(), serial])));
    expect(granted(openUnit(context, serial))).toMatchObject({
      unit: { state: 'on the way', depot: 'HAL', bay: '' },
      transfer: { number, to: 'HAL', dueOn: DUE },
    });
    expect(free(context, model)).toBe(before - 1);
    expect(free(context, model, addDays(DUE, -1))).toBe(before - 1);
    expect(free(context, model, DUE)).toBe(before);
    // Not there on its day and not taken in: it is still missing today.
    const later: Context = { ...context, now: () => new Date(`${addDays(DUE, 4)}T08:00:00Z`) };
    expect(free(later, model, addDays(DUE, 4))).toBe(before - 1);
    expect(granted(listHouseTransfers(later)).transfers).toMatchObject([{ number, overdue: true }]);
    expect(code(moveUnit(context, { serial, to: 'A01' }))).toBe('other-depot');
    expect(code(sendTransfer(context, sending([serial])))).toBe('unit-on-the-way');
    const arrived = granted(arriveTransfer(context, { ...ARRIVAL, number, units: [{ serial, bay: 'a01' }] }));
    expect(arrived).toEqual({ state: 'arrived', left: [] });
    expect(free(context, model)).toBe(before);
    const { unit, history } = granted(openUnit(context, serial));
    expect(unit).toMatchObject({ state: 'ready', depot: 'HAL', bay: 'A01' });
    expect(history.map(({ kind }) => kind)).toEqual(['arrived', 'sent', 'added']);
  });

  it('carries counted pieces: off the one shelf at once, on the other when they arrive, and what is missing is written off', async () => {
    const context = await demoHouseContext('yard');
    const items = [{ model: 'S-303', count: 10 }];
    const { number } = granted(sendTransfer(context, { ...sending([]), items }));
    expect(free(context, 'S-303')).toBe(50);
    expect(code(arriveTransfer(context, { ...ARRIVAL, number, items: [{ model: 'S-303', arrived: 11 }] }))).toBe(
      'more-than-sent',
    );
    granted(arriveTransfer(context, { ...ARRIVAL, number, items: [{ model: 'S-303', arrived: 8 }] }));
    expect(free(context, 'S-303')).toBe(58);
    expect(code(sendTransfer(context, { ...sending([]), items: [{ model: 'S-303', count: 31 }] }))).toBe(
      'pieces-not-free',
    );
    expect(code(sendTransfer(context, { ...sending([]), items: [{ model: 'D-112', count: 1 }] }))).toBe(
      'model-has-units',
    );
  });

  it('waits for what is not there yet, or writes it off with a reason', async () => {
    const context = await demoHouseContext('yard');
    const units = context.database.raw
      .prepare("SELECT serial FROM unit WHERE depot = 'VEN' AND state = 'ready' ORDER BY serial LIMIT 3")
      .pluck()
      .all()
      .map(String);
    const [first = '', second = '', third = ''] = units;
    const { number } = granted(sendTransfer(context, sending(units)));
    const part = granted(arriveTransfer(context, { ...ARRIVAL, number, units: [{ serial: first, bay: 'A01' }] }));
    expect(part).toEqual({ state: 'on the way', left: [second, third] });
    expect(code(arriveTransfer(context, { ...ARRIVAL, number, units: [{ serial: first, bay: 'A01' }] }))).toBe(
      'not-on-transfer',
    );
    expect(code(arriveTransfer(context, { ...ARRIVAL, number, units: [{ serial: second, bay: 'Q01' }] }))).toBe(
      'no-such-bay',
    );
    expect(code(arriveTransfer(context, { ...ARRIVAL, number, lost: [{ serial: second, reason: '' }] }))).toBe(
      'reason-missing',
    );
    const rest = { units: [{ serial: third, bay: 'A02' }], lost: [{ serial: second, reason: 'fell off the lorry' }] };
    expect(granted(arriveTransfer(context, { ...ARRIVAL, ...rest, number }))).toMatchObject({ state: 'arrived' });
    expect(granted(openUnit(context, second)).unit.state).toBe('lost');
    expect(code(arriveTransfer(context, { ...ARRIVAL, number: 'T-9' }))).toBe('no-such-transfer');
  });

  it('sends a broken unit as it is, which does not become ready by travelling', async () => {
    const context = await demoHouseContext('yard');
    const { serial } = some(context, "state = 'workshop'");
    const { number } = granted(sendTransfer(context, sending([serial])));
    granted(arriveTransfer(context, { ...ARRIVAL, number, units: [{ serial, bay: 'A01' }] }));
    expect(granted(openUnit(context, serial)).unit).toMatchObject({ state: 'workshop', depot: 'HAL' });
  });

  it('refuses what cannot go', async () => {
    const context = await demoHouseContext('yard');
    const { serial } = some(context, "state = 'ready'");
    const { raw } = context.database;
    const away = String(raw.prepare("SELECT serial FROM unit WHERE depot = 'HAL' LIMIT 1").pluck().get());
    const tried = (change: Partial<TransferToSend>) => code(sendTransfer(context, { ...sending([serial]), ...change }));
    expect(tried({ to: 'VEN' })).toBe('same-depot');
    expect(tried({ from: 'XX' })).toBe('no-such-depot');
    expect(tried({ dueOn: HOUSE_DAY })).toBe('due-day-unusable');
    expect(tried({ dueOn: 'soon' })).toBe('due-day-unusable');
    expect(tried({ serials: [] })).toBe('nothing-to-send');
    expect(tried({ serials: [away] })).toBe('other-depot');
    expect(tried({ serials: ['NO-1'] })).toBe('no-such-unit');
    raw.exec("INSERT INTO booking (id, number, state) VALUES (1, 'B-1', 'confirmed')");
    raw
      .prepare(
        'INSERT INTO booking_unit (booking_id, unit_serial, starts_on, ends_before, free_again_on) VALUES (1, ?, ?, ?, ?)',
      )
      .run(serial, addDays(HOUSE_DAY, 2), addDays(HOUSE_DAY, 5), addDays(HOUSE_DAY, 6));
    expect(tried({})).toBe('unit-booked');
    expect(tried({ dueOn: addDays(HOUSE_DAY, 2) })).toBe('granted');
    const lost = some(context, "state = 'ready'").serial;
    raw.prepare("UPDATE unit SET state = 'lost' WHERE serial = ?").run(lost);
    expect(tried({ serials: [lost] })).toBe('unit-not-here');
    expect(granted(listHouseTransfers(context)).transfers.length).toBe(1);
  });

  it.each(['desk', 'contractor'] as const)('is not for a %s', async (role) => {
    const context = await demoHouseContext(role);
    expect(code(sendTransfer(context, sending(['X-1'])))).toBe('not-allowed');
    expect(code(arriveTransfer(context, { ...ARRIVAL, number: 'T-1' }))).toBe('not-allowed');
    expect(code(listHouseTransfers(context))).toBe(role === 'desk' ? 'granted' : 'not-allowed');
  });
});

it('a hold that nobody confirmed in time does not keep its units from the other depot', async () => {
  const { context, number, serials } = await bookedHouse();
  const here = serials.find((serial) => serial === some(context, `serial = '${serial}'`)?.serial) ?? '';
  const yard: Context = { ...context, actor: { id: 'u-9', name: 'The yard', role: 'yard' } };
  const asked = { ...sending([here]), dueOn: addDays(HIRE.starts_on, 1) };
  expect(code(sendTransfer(yard, asked))).toBe('unit-booked');
  const held = context.database.raw.prepare('SELECT held_until AS until FROM booking WHERE number = ?').get(number);
  const { until } = held as { until: string };
  const later: Context = { ...yard, now: () => new Date(Date.parse(until) + 1000) };
  expect(code(sendTransfer(later, asked))).toBe('granted');
  expect(context.database.raw.prepare('SELECT state FROM booking WHERE number = ?').get(number)).toEqual({
    state: 'lapsed',
  });
});
