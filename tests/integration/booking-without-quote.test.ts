import { describe, expect, it } from 'vitest';
import { type Context, USER_ROLES } from '#lib/services/context.ts';
import { bookEquipment } from '#lib/services/yard/book-equipment.ts';
import type { EquipmentAsked } from '#lib/services/yard/equipment-asked.ts';
import { listBookings } from '#lib/services/yard/list-bookings.ts';
import { newBookingForm } from '#lib/services/yard/new-booking-form.ts';
import { openBooking } from '#lib/services/yard/open-booking.ts';
import { openOut } from '#lib/services/yard/out/open-out.ts';
import { tryBooking } from '#lib/services/yard/try-booking.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

const REFUSED = (code: string) => ({ ok: false, reason: { code } });
const DRIVE = 'D-112';
const ASKED: EquipmentAsked = {
  needs: [{ model: DRIVE, count: 2 }],
  startsOn: '2026-03-16',
  endsBefore: '2026-03-19',
  heldUntil: null,
  depot: '',
  why: 'shown at the works of a customer',
  purpose: 'demonstration',
};

function one(context: Context, sql: string): unknown {
  return context.database.raw.prepare(sql).pluck().get();
}

describe('equipment booked without a quote', () => {
  it('is held for the house itself, told as what it is for, and free again after the turnaround', async () => {
    const context = await demoHouseContext('yard');
    const tried = granted(tryBooking(context, ASKED));
    expect(tried).toMatchObject({
      isFree: true,
      models: [{ model: DRIVE, asked: 2, short: '', waiters: [], alike: [] }],
    });
    const { number, serials } = granted(bookEquipment(context, ASKED));
    expect(serials).toHaveLength(2);
    expect(one(context, 'SELECT min(free_again_on) FROM booking_unit')).toBe(tried.freeAgainOn);
    expect(granted(openBooking(context, number))).toMatchObject({
      customer: null,
      title: 'demonstration',
      note: ASKED.why,
    });
    expect(granted(openOut(context, number))).toMatchObject({ customer: null, title: 'demonstration' });
    const before = tried.models[0]?.free ?? 0;
    expect(granted(tryBooking(context, ASKED)).models[0]?.free).toBe(before - 2);
  });

  it('is kept for a customer by name, and found by it', async () => {
    const context = await demoHouseContext('yard');
    const [customer = ''] = granted(
      newBookingForm({ ...context, actor: { ...context.actor, role: 'desk' } }),
    ).customers;
    const { number } = granted(bookEquipment(context, { ...ASKED, purpose: 'customer', customer }));
    expect(granted(openBooking(context, number)).customer).toBe(customer);
    const found = granted(listBookings(context, { filter: 'all', words: customer, from: '', until: '', page: 1 }));
    expect(found.rows.map((row) => row.number)).toContain(number);
    expect(granted(newBookingForm(context)).customers).toEqual([]);
  });

  it('says of what is short who could wait, what must be brought, and what of its kind is free', async () => {
    const context = await demoHouseContext('yard');
    const all = granted(tryBooking(context, ASKED)).models[0]?.free ?? 0;
    const needs = [{ model: DRIVE, count: all }];
    const taken = granted(bookEquipment(context, { ...ASKED, needs }));
    const tried = granted(tryBooking(context, { ...ASKED, endsBefore: '2026-03-17' }));
    expect(tried.isFree).toBe(false);
    const [short] = tried.models;
    expect(short?.short).toMatch(/^2 of D-112 are asked for and 0 are free/);
    expect(short?.waiters).toMatchObject([{ number: taken.number, frees: all }]);
    expect(short?.alike.length).toBeGreaterThan(0);
    expect(short?.alike.every(({ model, free }) => model.startsWith('D-') && model !== DRIVE && free >= 2)).toBe(true);
    expect(bookEquipment(context, ASKED)).toMatchObject(REFUSED('units-not-free'));
  });

  it('names the other depot that brings what the despatching one lacks, and when', async () => {
    const context = await demoHouseContext('yard');
    const [home, other] = granted(newBookingForm(context)).depots;
    context.database.raw.prepare('UPDATE unit SET depot = ? WHERE model_number = ?').run(other?.code, DRIVE);
    const tried = granted(tryBooking(context, { ...ASKED, depot: home?.code ?? '' }));
    expect(tried.models[0]?.bring).toMatchObject([
      { depot: other?.name, count: 2, sendOn: '2026-03-15', isInTime: true },
    ]);
    expect(granted(tryBooking(context, { ...ASKED, depot: other?.code ?? '' })).models[0]?.bring).toEqual([]);
    const late = { ...ASKED, startsOn: '2026-03-02', endsBefore: '2026-03-03' };
    expect(granted(tryBooking(context, late)).models[0]?.bring).toMatchObject([{ isInTime: false }]);
  });
});

describe('what cannot be booked', () => {
  it('is refused, each with its code, when it is tried and when it is booked', async () => {
    const context = await demoHouseContext('yard');
    const made = String(
      one(context, "SELECT number FROM model WHERE json_extract(facts_json, '$.made_to_order')") ?? '',
    );
    const wanted: readonly (readonly [string, Partial<EquipmentAsked>])[] = [
      ['nothing-asked', { needs: [] }],
      ['nothing-asked', { needs: [{ model: DRIVE, count: 0 }] }],
      ['date-unreadable', { startsOn: 'soon' }],
      ['date-unreadable', { endsBefore: ASKED.startsOn }],
      ['date-unreadable', { endsBefore: '2029-01-01' }],
      ['date-unreadable', { startsOn: '2029-01-01', endsBefore: '2029-01-02' }],
      ['dates-past', { startsOn: '2026-02-01', endsBefore: '2026-03-02' }],
      ['no-such-model', { needs: [{ model: 'ZZ-1', count: 1 }] }],
      ...(made === '' ? [] : [['no-such-model', { needs: [{ model: made, count: 1 }] }] as const]),
      ['no-such-depot', { depot: 'XXX' }],
    ];
    for (const [code, change] of wanted) {
      expect(tryBooking(context, { ...ASKED, ...change }), code).toMatchObject(REFUSED(code));
      expect(bookEquipment(context, { ...ASKED, ...change }), code).toMatchObject(REFUSED(code));
    }
    const asked: readonly (readonly [string, Partial<EquipmentAsked>])[] = [
      ['reason-missing', { why: ' ' }],
      ['moment-unreadable', { heldUntil: '2026-03-01T00:00:00Z' }],
      ['moment-unreadable', { heldUntil: 'tomorrow' }],
      ['customer-missing', { purpose: 'customer' }],
      ['no-such-customer', { purpose: 'customer', customer: 'Nobody at all' }],
      ['units-not-free', { needs: [{ model: DRIVE, count: 900 }] }],
      ['pieces-not-free', { needs: [{ model: 'S-309', count: 1000 }] }],
    ];
    for (const [code, change] of asked)
      expect(bookEquipment(context, { ...ASKED, ...change }), code).toMatchObject(REFUSED(code));
    expect(one(context, 'SELECT count(*) FROM booking')).toBe(0);
  });

  it.each(USER_ROLES)('is for a %s to ask or not', async (role) => {
    const context = await demoHouseContext(role);
    const answers = [newBookingForm(context), tryBooking(context, ASKED), bookEquipment(context, ASKED)];
    for (const answer of answers)
      if (role === 'contractor') expect(answer).toMatchObject(REFUSED('not-allowed'));
      else expect(answer.ok).toBe(true);
  });
});
