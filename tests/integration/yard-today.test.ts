import { describe, expect, it } from 'vitest';
import { addDays } from '#lib/kernel/date-range.ts';
import type { Context } from '#lib/services/context.ts';
import { openYard } from '#lib/services/yard/open-yard.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext, HOUSE_DAY } from '#tests/support/houses/demo-house.ts';

/** How the units of a booking stand where it stands so. */
const UNITS_IN: Readonly<Record<string, string>> = { picked: 'picked', out: 'out', cancelled: 'released' };

let taken = 0;

/** Two units of the house booked from a day on, in a state. */
function book(context: Context, { state, from, days }: { state: string; from: number; days: number }): string {
  const { raw } = context.database;
  taken += 1;
  const number = `B-9${String(taken).padStart(4, '0')}`;
  const starts = addDays(HOUSE_DAY, from);
  const ends = addDays(starts, days);
  const id = raw.prepare('INSERT INTO booking (number, state) VALUES (?, ?)').run(number, state).lastInsertRowid;
  const serials = raw
    .prepare('SELECT serial FROM unit ORDER BY serial LIMIT 2 OFFSET ?')
    .pluck()
    .all(taken * 2);
  const insert = raw.prepare(
    'INSERT INTO booking_unit (booking_id, unit_serial, starts_on, ends_before, free_again_on, state) VALUES (?, ?, ?, ?, ?, ?)',
  );
  for (const serial of serials) insert.run(id, serial, starts, ends, ends, UNITS_IN[state] ?? 'held');
  return number;
}

describe('today in the yard', () => {
  it('says what leaves, what comes back, what is late, and what leaves within a week', async () => {
    const context = await demoHouseContext('yard');
    const leaves = book(context, { state: 'held', from: 0, days: 3 });
    const lateOut = book(context, { state: 'picked', from: -2, days: 9 });
    const lastDay = book(context, { state: 'out', from: -4, days: 5 });
    const lateBack = book(context, { state: 'out', from: -9, days: 5 });
    const ahead = book(context, { state: 'confirmed', from: 7, days: 2 });
    book(context, { state: 'confirmed', from: 8, days: 2 });
    book(context, { state: 'cancelled', from: 0, days: 2 });
    book(context, { state: 'out', from: -1, days: 9 });
    const yard = granted(openYard(context));
    const told = (rows: typeof yard.outs) => rows.map(({ booking, late, units }) => [booking, late, units]);
    expect(told(yard.outs)).toEqual([
      [lateOut, true, 2],
      [leaves, false, 2],
    ]);
    expect(told(yard.backs)).toEqual([
      [lateBack, true, 2],
      [lastDay, false, 2],
    ]);
    expect(told(yard.ahead)).toEqual([[ahead, false, 2]]);
  });

  it.each(['desk', 'yard', 'administrator'] as const)('is open to %s', async (role) => {
    expect(openYard(await demoHouseContext(role))).toMatchObject({ ok: true, value: { today: HOUSE_DAY, outs: [] } });
  });

  it('is not for a contractor', async () => {
    expect(openYard(await demoHouseContext('contractor'))).toMatchObject({
      ok: false,
      reason: { code: 'not-allowed' },
    });
  });
});
