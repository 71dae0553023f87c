import { describe, expect, it } from 'vitest';
import { insertBooking, insertBookingUnit } from '#db/queries/bookings.ts';
import { insertApproval } from '#db/queries/quote-options.ts';
import { insertPlan, insertQuote } from '#db/queries/quotes.ts';
import { addDays } from '#lib/kernel/date-range.ts';
import type { Context } from '#lib/services/context.ts';
import { dueFirst, openHome } from '#lib/services/house/open-home.ts';
import { openHouseFigures } from '#lib/services/house/open-house-figures.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext, HOUSE_DAY } from '#tests/support/houses/demo-house.ts';

function write(context: Context, sql: string, ...values: readonly unknown[]): void {
  context.database.raw.prepare(sql).run(...values);
}

function quoted(
  context: Context,
  {
    enquiryId,
    validUntil,
    state = 'issued',
    startsOn = addDays(HOUSE_DAY, 5),
    revision = 'A',
  }: {
    readonly enquiryId: number;
    readonly validUntil: string;
    readonly state?: string;
    readonly startsOn?: string;
    readonly revision?: string;
  },
): number {
  write(context, 'UPDATE enquiry SET state = ? WHERE id = ?', state === 'issued' ? 'quoted' : state, enquiryId);
  return insertQuote(context.database.db, {
    enquiry_id: enquiryId,
    number: `Q-${enquiryId}`,
    revision,
    state,
    issued_on: HOUSE_DAY,
    valid_until: validUntil,
    total_minor: 120_00,
    currency: 'EUR',
    frozen_json: JSON.stringify({ site: { startsOn, days: 2 }, price: { net_minor: 100_00 } }),
  });
}

function booked(
  context: Context,
  { quoteId, starts_on }: { readonly quoteId: number; readonly starts_on: string },
): string {
  const serial = String(
    context.database.raw.prepare("SELECT serial FROM unit WHERE state = 'ready' LIMIT 1").pluck().get(),
  );
  const id = insertBooking(context.database.db, {
    number: `B-${quoteId}`,
    quote_id: quoteId,
    option_slot: 0,
    state: 'held',
    held_until: null,
    note: '',
    accepted_on: HOUSE_DAY,
    accepted_by: '',
    order_number: '',
  });
  const ends_before = addDays(starts_on, 2);
  const row = {
    booking_id: id,
    unit_serial: serial,
    starts_on,
    ends_before,
    free_again_on: addDays(ends_before, 1),
  };
  insertBookingUnit(context.database.db, row);
  return serial;
}

describe('what needs somebody today', () => {
  it.each(['yard', 'contractor'] as const)(
    'a %s gets neither the home page of the Desk nor its figures',
    async (role) => {
      const context = await demoHouseContext(role);
      const no = { ok: false, reason: { code: 'not-allowed' } };
      expect(openHome(context)).toMatchObject(no);
      expect(openHouseFigures(context, { days: 28, depot: '' })).toMatchObject(no);
    },
  );

  it('an answer that is due within a week shows, the most overdue first; a later one and one that ended do not', async () => {
    const context = await demoHouseContext();
    const due = 'UPDATE enquiry SET due_on = ?, state = ? WHERE id = ?';
    write(context, 'UPDATE enquiry SET due_on = NULL');
    write(context, due, addDays(HOUSE_DAY, 7), 'new', 1);
    write(context, due, addDays(HOUSE_DAY, -2), 'being worked', 2);
    write(context, due, addDays(HOUSE_DAY, 8), 'new', 3);
    write(context, due, HOUSE_DAY, 'declined', 4);
    write(context, due, HOUSE_DAY, 'quoted', 5);
    const { due: shown } = granted(openHome(context));
    expect(shown.map(({ enquiryId, inDays }) => [enquiryId, inDays])).toEqual([
      [2, -2],
      [1, 7],
    ]);
  });

  it('knows whose work it is, and who asked for a discount', async () => {
    const context = await demoHouseContext();
    write(context, 'UPDATE enquiry SET due_on = ?, assigned_to = ? WHERE id = 1', HOUSE_DAY, context.actor.id);
    const asked = { option_slot: 0, asked_json: '{}', state: 'asked', reason: 'Long hire', asked_at: HOUSE_DAY };
    insertApproval(context.database.db, { ...asked, enquiry_id: 1, asked_by: context.actor.id, asked_by_name: 'T' });
    const home = granted(openHome(context));
    expect(home.due.find(({ enquiryId }) => enquiryId === 1)?.mine).toBe(true);
    expect(home.approvals).toMatchObject([{ own: true }]);
  });

  it('of two that are due on one day one’s own stands first', () => {
    const row = { enquiryId: 1, title: '', customer: '', state: 'new', dueOn: HOUSE_DAY, inDays: 0, assignedName: '' };
    const rows = dueFirst([
      { ...row, number: 'E-1', mine: false },
      { ...row, number: 'E-2', mine: true },
    ]);
    expect(rows.map(({ number }) => number)).toEqual(['E-2', 'E-1']);
  });

  it('a quote that lapses within a week shows, and one that lapsed; a superseded or answered one does not', async () => {
    const context = await demoHouseContext();
    quoted(context, { enquiryId: 1, validUntil: addDays(HOUSE_DAY, 3) });
    quoted(context, { enquiryId: 2, validUntil: addDays(HOUSE_DAY, -1) });
    quoted(context, { enquiryId: 3, validUntil: addDays(HOUSE_DAY, 20) });
    quoted(context, { enquiryId: 4, validUntil: addDays(HOUSE_DAY, 1) });
    quoted(context, { enquiryId: 4, validUntil: addDays(HOUSE_DAY, 30), revision: 'B' });
    quoted(context, { enquiryId: 5, validUntil: HOUSE_DAY, state: 'accepted' });
    const { lapsing } = granted(openHome(context));
    expect(lapsing.map(({ quote, inDays }) => [quote, inDays])).toEqual([
      ['Q-2 A', -1],
      ['Q-1 A', 3],
    ]);
  });

  it('a discount that waits shows until it is decided', async () => {
    const context = await demoHouseContext();
    const asked = { option_slot: 0, asked_json: '{}', state: 'asked', asked_at: `${HOUSE_DAY}T08:00:00Z` };
    insertApproval(context.database.db, {
      ...asked,
      enquiry_id: 1,
      reason: 'Long hire',
      asked_by: 'u1',
      asked_by_name: 'A. Teal',
    });
    const { approvals } = granted(openHome(context));
    expect(approvals).toMatchObject([{ enquiryId: 1, reason: 'Long hire', askedByName: 'A. Teal', own: false }]);
    write(context, "UPDATE discount_approval SET state = 'approved', decided_by = 'u2', decided_at = ?", HOUSE_DAY);
    expect(granted(openHome(context)).approvals).toEqual([]);
  });

  it('a booking whose last day is past shows until it is back; one that runs does not', async () => {
    const context = await demoHouseContext();
    const quoteId = quoted(context, { enquiryId: 1, validUntil: HOUSE_DAY, state: 'accepted' });
    booked(context, { quoteId, starts_on: addDays(HOUSE_DAY, -2) });
    expect(granted(openHome(context)).late).toMatchObject([
      { booking: `B-${quoteId}`, units: 1, endedBefore: HOUSE_DAY },
    ]);
    const dayBefore = { ...context, now: () => new Date(`${addDays(HOUSE_DAY, -1)}T08:00:00Z`) };
    expect(granted(openHome(dayBefore)).late).toEqual([]);
    write(context, "UPDATE booking_unit SET state = 'back'");
    expect(granted(openHome(context)).late).toEqual([]);
  });
});

describe('equipment that is not there', () => {
  it('a plan that asks for more than is free on its dates is named with the model', async () => {
    const context = await demoHouseContext();
    const kits = [{ items: [{ item: 'D-112', count: 99 }] }];
    const plan = { plans: [{ preference: 'cost', kits }] };
    insertPlan(context.database.db, {
      enquiry_id: 1,
      option_slot: 0,
      input_hash: 'x',
      state: 'ready',
      result_json: JSON.stringify(plan),
      created_at: HOUSE_DAY,
    });
    const [short, ...others] = granted(openHome(context)).short;
    expect(others).toEqual([]);
    expect(short).toMatchObject({ enquiryId: 1, kind: 'planned' });
    expect(short?.sentences[0]).toContain('99 of D-112 are asked for');
    write(context, "UPDATE enquiry SET state = 'declined' WHERE id = 1");
    expect(granted(openHome(context)).short).toEqual([]);
  });

  it('a booked unit that went to the workshop, or whose inspection falls due before the hire ends, is named', async () => {
    const context = await demoHouseContext();
    const quoteId = quoted(context, { enquiryId: 1, validUntil: HOUSE_DAY, state: 'accepted' });
    const serial = booked(context, { quoteId, starts_on: addDays(HOUSE_DAY, 3) });
    write(context, 'UPDATE unit SET inspection_due_on = NULL, calibration_due_on = NULL WHERE serial = ?', serial);
    expect(granted(openHome(context)).short).toEqual([]);
    write(context, 'UPDATE unit SET inspection_due_on = ? WHERE serial = ?', addDays(HOUSE_DAY, 4), serial);
    expect(granted(openHome(context)).short).toMatchObject([{ kind: 'booked', startsOn: addDays(HOUSE_DAY, 3) }]);
    write(context, "UPDATE unit SET state = 'workshop' WHERE serial = ?", serial);
    expect(granted(openHome(context)).short[0]?.sentences).toEqual([`${serial} of B-${quoteId} stands in workshop.`]);
  });
});

describe('the figures of the house', () => {
  it('an accepted quote brings income in the month its hire starts, and its units are out', async () => {
    const context = await demoHouseContext();
    const startsOn = addDays(HOUSE_DAY, 3);
    quoted(context, { enquiryId: 2, validUntil: HOUSE_DAY });
    const quoteId = quoted(context, { enquiryId: 1, validUntil: HOUSE_DAY, state: 'accepted', startsOn });
    const serial = booked(context, { quoteId, starts_on: startsOn });
    const figures = granted(openHouseFigures(context, { days: 28, depot: '' }));
    expect(figures.income.months.filter(({ net_minor }) => net_minor > 0)).toEqual([
      { month: startsOn.slice(0, 7), net_minor: 100_00, quotes: 1 },
    ]);
    expect(figures.use[0]).toMatchObject({ bookedDays: 2 });
    expect(figures.whole).toBeGreaterThan(0);
    const depot = String(context.database.raw.prepare('SELECT depot FROM unit WHERE serial = ?').pluck().get(serial));
    const other = figures.depots.find(({ code }) => code !== depot)?.code;
    const here = granted(openHouseFigures(context, { days: 28, depot }));
    expect(here.use[0]).toMatchObject({ bookedDays: 2 });
    expect(here.whole).toBeGreaterThan(figures.whole);
    expect(other).toBeDefined();
    expect(granted(openHouseFigures(context, { days: 28, depot: other ?? '' })).whole).toBe(0);
  });

  it('a house without accepted quotes has months of nothing and nothing out', async () => {
    const figures = granted(openHouseFigures(await demoHouseContext(), { days: 364, depot: '' }));
    expect(figures.income.months.every(({ net_minor }) => net_minor === 0)).toBe(true);
    expect(figures.whole).toBe(0);
  });
});
