import { describe, expect, it } from 'vitest';
import { addDays, rangeOfDays } from '#lib/kernel/date-range.ts';
import { freePieces } from '#lib/services/house/house-facts.ts';
import { openAvailability, openUnitAvailability, SHOWN_DAYS } from '#lib/services/stock/open-availability.ts';
import { sendTransfer } from '#lib/services/stock/send-transfer.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext, HOUSE_DAY } from '#tests/support/houses/demo-house.ts';

const ASKED = { from: HOUSE_DAY, role: 'drive', depot: '', hireDays: 3 } as const;

describe('the timeline of the house', () => {
  it('is what a plan would be given on each day: booked, on the way, late and counted pieces included', async () => {
    const context = await demoHouseContext('yard');
    const { raw } = context.database;
    const [late, held, sent] = raw
      .prepare(
        "SELECT serial FROM unit WHERE model_number = 'D-112' AND depot = 'VEN' AND state = 'ready' ORDER BY serial",
      )
      .pluck()
      .all()
      .map(String);
    raw.exec("INSERT INTO booking (id, number, state, depot) VALUES (1, 'B-1', 'out', 'VEN')");
    const insert = raw.prepare(
      'INSERT INTO booking_unit (booking_id, unit_serial, starts_on, ends_before, free_again_on, state) VALUES (1, ?, ?, ?, ?, ?)',
    );
    insert.run(late, addDays(HOUSE_DAY, -9), addDays(HOUSE_DAY, -2), addDays(HOUSE_DAY, -1), 'out');
    insert.run(held, addDays(HOUSE_DAY, 5), addDays(HOUSE_DAY, 9), addDays(HOUSE_DAY, 10), 'held');
    raw
      .prepare(
        "INSERT INTO booking_item (booking_id, model_number, count, starts_on, ends_before, free_again_on) VALUES (1, 'S-303', 7, ?, ?, ?)",
      )
      .run(addDays(HOUSE_DAY, 2), addDays(HOUSE_DAY, 4), addDays(HOUSE_DAY, 6));
    if (sent !== undefined)
      granted(
        sendTransfer(context, {
          from: 'VEN',
          to: 'HAL',
          dueOn: addDays(HOUSE_DAY, 2),
          serials: [sent],
          items: [],
          note: '',
        }),
      );
    let checked = 0;
    for (const role of ['drive', 'accessory'] as const) {
      const { rows } = granted(openAvailability(context, { ...ASKED, role }));
      expect(rows.every(({ days }) => days.length === SHOWN_DAYS)).toBe(true);
      for (const { model, days } of rows)
        for (const { on, counts } of days.filter(({ on: day }) => day < addDays(HOUSE_DAY, 12))) {
          expect(counts.free, `${model} ${on}`).toBe(freePieces(context, { window: rangeOfDays(on, 3) })[model]);
          checked += 1;
        }
    }
    console.info(`timeline of the house: ${checked} cells checked`);
    const { rows } = granted(openAvailability(context, ASKED));
    const drive = rows.find(({ model }) => model === 'D-112');
    expect(drive?.days[0]?.counts).toMatchObject({ late: 1, transfer: sent === undefined ? 0 : 1 });
    expect(drive?.days[5]?.counts.booked).toBe(1);
    const units = granted(openUnitAvailability(context, { ...ASKED, model: 'D-112' }));
    expect(units.rows.find(({ serial }) => serial === late)?.days[0]).toMatchObject({ state: 'late', number: 'B-1' });
    expect(units.engagements.map(({ serial }) => serial).sort()).toEqual([late, held].sort());
  });

  it('begins with the week of today, knows its depots, and falls back where the address is nonsense', async () => {
    const context = await demoHouseContext('desk');
    const view = granted(openAvailability(context, { from: 'soon', role: 'head', depot: 'XX', hireDays: 99 }));
    expect(view.asked).toEqual({ from: HOUSE_DAY, role: 'head', depot: '', hireDays: 1 });
    const total = (depot: string) =>
      granted(openAvailability(context, { ...ASKED, depot })).rows.reduce((sum, row) => sum + row.total, 0);
    expect(total('VEN') + total('HAL')).toBe(total(''));
    expect(openUnitAvailability(context, { ...ASKED, model: 'Z-9' })).toMatchObject({
      reason: { code: 'no-such-model' },
    });
  });

  it('is not for a contractor', async () => {
    const context = await demoHouseContext('contractor');
    expect(openAvailability(context, ASKED)).toMatchObject({ reason: { code: 'not-allowed' } });
    expect(openUnitAvailability(context, { ...ASKED, model: 'D-112' })).toMatchObject({
      reason: { code: 'not-allowed' },
    });
  });
});
