import { describe, expect, it } from 'vitest';
import { findBooking, unitsOfBooking } from '#db/queries/bookings.ts';
import { addDays, rangeOfDays } from '#lib/kernel/date-range.ts';
import type { Context } from '#lib/services/context.ts';
import { freePieces } from '#lib/services/house/house-facts.ts';
import { cancelBooking } from '#lib/services/yard/cancel-booking.ts';
import { closeBooking } from '#lib/services/yard/close-booking.ts';
import { confirmBooking } from '#lib/services/yard/confirm-booking.ts';
import { extendBooking } from '#lib/services/yard/extend-booking.ts';
import { hireOfBooking } from '#lib/services/yard/hire-of-booking.ts';
import { giveOffHireNotice } from '#lib/services/yard/off-hire.ts';
import { reportLate } from '#lib/services/yard/report-late.ts';
import { swapUnit } from '#lib/services/yard/swap-unit.ts';
import { granted } from '#tests/support/granted.ts';
import {
  type BookedHouse,
  bookAgain,
  bookedHouse,
  HIRE,
  onDay,
  takeUnits,
} from '#tests/support/houses/booked-house.ts';

const REFUSED = (code: string) => ({ ok: false, reason: { code } });

function rows(context: Context, number: string) {
  const booking = findBooking(context.database.db, number);
  return booking ? unitsOfBooking(context.database.db, booking.id) : [];
}

function hire(context: Context, number: string) {
  const booking = findBooking(context.database.db, number);
  const found = booking ? hireOfBooking(context.database.db, { context, booking }) : null;
  if (!found) throw new Error(`No hire of ${number}.`);
  return found;
}

function modelOf(context: Context, serial: string): string {
  return String(context.database.raw.prepare('SELECT model_number FROM unit WHERE serial = ?').pluck().get(serial));
}

function roleOf(context: Context, serial: string): unknown {
  return context.database.raw.prepare('SELECT role FROM model WHERE number = ?').pluck().get(modelOf(context, serial));
}

function ofAnotherKind(
  context: Context,
  { serials, serial }: { readonly serials: readonly string[]; readonly serial: string },
): string {
  return serials.find((one) => roleOf(context, one) !== roleOf(context, serial)) ?? '';
}

/** Leaves no unit of a model but those of one booking: the others go into the workshop. */
function keepOnly(context: Context, serial: string): void {
  context.database.raw
    .prepare("UPDATE unit SET state = 'workshop' WHERE serial <> ? AND model_number = ?")
    .run(serial, modelOf(context, serial));
}

async function outHouse(): Promise<BookedHouse> {
  const house = await bookedHouse();
  granted(confirmBooking(house.context, { number: house.number }));
  takeUnits(onDay(house.context, HIRE.starts_on), { number: house.number, to: 'out' });
  return { ...house, context: onDay(house.context, '2026-03-18') };
}

const EXTENSION = { endsBefore: '2026-03-26', serials: [], askedBy: 'R. Dunlin', why: 'valves stiffer than thought' };

describe('an extension', () => {
  it('moves the last day of all units and counted pieces, and says what the hire comes to before and after', async () => {
    const { context, number, serials } = await outHouse();
    const tried = granted(extendBooking(context, { ...EXTENSION, number }, 'trial'));
    expect(new Set(rows(context, number).map(({ ends_before }) => ends_before))).toEqual(new Set([HIRE.ends_before]));
    const done = granted(extendBooking(context, { ...EXTENSION, number }));
    expect(done).toEqual(tried);
    expect(done.serials).toEqual(serials);
    expect(done.hire?.after_minor).toBeGreaterThan(done.hire?.before_minor ?? 0);
    expect(new Set(rows(context, number).map(({ free_again_on }) => free_again_on))).toEqual(new Set(['2026-03-28']));
    const items = context.database.raw.prepare('SELECT DISTINCT ends_before FROM booking_item').pluck().all();
    expect(items).toEqual(['2026-03-26']);
    const extensions = context.database.raw
      .prepare('SELECT ended_before, ends_before, asked_by FROM booking_extension')
      .all();
    expect(extensions).toEqual([{ ended_before: '2026-03-21', ends_before: '2026-03-26', asked_by: 'R. Dunlin' }]);
  });

  it('gives a later booking another unit of the same model where one is free', async () => {
    const { context, number } = await outHouse();
    const later = await bookAgain(context, '2026-03-23');
    const shared = later.serials.filter((serial) => rows(context, number).some((row) => row.unit_serial === serial));
    expect(shared.length).toBeGreaterThan(0);
    const done = granted(extendBooking(context, { ...EXTENSION, number }));
    expect(done.moved.map(({ booking, serial }) => [booking, serial])).toEqual(
      shared.map((serial) => [later.number, serial]),
    );
    for (const { serial, instead } of done.moved) {
      expect(modelOf(context, instead ?? '')).toBe(modelOf(context, serial));
      expect(rows(context, later.number).find((row) => row.unit_serial === serial)?.state).toBe('swapped');
    }
    expect(rows(context, later.number).filter(({ state }) => state === 'held').length).toBe(later.serials.length);
  });

  it('is refused naming whom it hits where there is no other, and changes nothing', async () => {
    const { context, number } = await outHouse();
    const later = await bookAgain(context, '2026-03-23');
    const [shared = ''] = later.serials.filter((serial) =>
      rows(context, number).some((row) => row.unit_serial === serial),
    );
    keepOnly(context, shared);
    const before = context.database.raw.prepare('SELECT * FROM booking_unit').all();
    const answer = extendBooking(context, { ...EXTENSION, number });
    expect(answer).toMatchObject(REFUSED('extension-hits'));
    expect(answer.ok ? '' : answer.reason.sentence).toContain(
      `${shared} is booked from 2026-03-23 by ${later.number} (Dunlin Water)`,
    );
    expect(context.database.raw.prepare('SELECT * FROM booking_unit').all()).toEqual(before);
  });

  it('is refused where it is shorter, too long, no date, of what is not there, or runs past a check', async () => {
    const { context, number, serials } = await outHouse();
    const extend = (change: Partial<typeof EXTENSION>) => extendBooking(context, { ...EXTENSION, number, ...change });
    expect(extend({ endsBefore: HIRE.ends_before })).toMatchObject(REFUSED('extension-shorter'));
    expect(extend({ endsBefore: '2029-03-26' })).toMatchObject(REFUSED('extension-too-long'));
    expect(extend({ endsBefore: 'soon' })).toMatchObject(REFUSED('date-unreadable'));
    const elsewhere = { ...EXTENSION, number, serials: ['NOT-HERE'] };
    expect(extendBooking(context, elsewhere)).toMatchObject(REFUSED('unit-not-so'));
    context.database.raw.prepare("UPDATE unit SET inspection_due_on = '2026-03-24' WHERE serial = ?").run(serials[0]);
    expect(extend({})).toMatchObject(REFUSED('check-falls-due'));
  });

  it('is refused where counted pieces that it keeps out are counted on by others', async () => {
    const { context, number } = await outHouse();
    const later = await bookAgain(context, '2026-03-23');
    const [item] = context.database.raw
      .prepare('SELECT model_number AS model, count FROM booking_item')
      .all() as readonly {
      readonly model: string;
      readonly count: number;
    }[];
    context.database.raw.prepare('UPDATE counted_shelf SET count = 0 WHERE model_number = ?').run(item?.model);
    context.database.raw.prepare('UPDATE model SET counted_stock = ? WHERE number = ?').run(item?.count, item?.model);
    expect(later.number).not.toBe(number);
    expect(extendBooking(context, { ...EXTENSION, number })).toMatchObject(REFUSED('pieces-not-free'));
  });

  it('of a booking that ended is refused', async () => {
    const { context, number } = await bookedHouse();
    granted(cancelBooking(context, { number, reason: 'put off' }));
    expect(extendBooking(context, { ...EXTENSION, number })).toMatchObject(REFUSED('booking-ended'));
  });
});

describe('an off-hire notice', () => {
  const said = { noticedAt: '2026-03-18T15:40:00Z', saidBy: 'R. Dunlin', serials: [], note: '' };

  it('is numbered without gaps, counts from its day and time, and ends the charge by the quote’s terms', async () => {
    const { context, number, serials } = await outHouse();
    const evening = onDay(context, '2026-03-18T16:00:00Z');
    const [first = '', ...rest] = serials;
    const one = granted(giveOffHireNotice(evening, { ...said, number, serials: [first] }));
    expect(one).toEqual({ notice: 'N-00001', serials: [first] });
    expect(giveOffHireNotice(evening, { ...said, number, serials: [first] })).toMatchObject(REFUSED('unit-not-so'));
    expect(giveOffHireNotice(evening, { ...said, number, saidBy: '' })).toMatchObject(REFUSED('said-by-missing'));
    expect(granted(giveOffHireNotice(evening, { ...said, number }))).toEqual({ notice: 'N-00002', serials: rest });
    expect(giveOffHireNotice(evening, { ...said, number })).toMatchObject(REFUSED('no-unit-so'));
    const later = onDay(context, '2026-03-24');
    for (const piece of hire(later, number).pieces.filter((one) => one.rows.length > 0)) {
      expect(piece).toMatchObject({
        days: 3,
        end: 'notice',
        window: { starts_on: HIRE.starts_on, ends_before: '2026-03-19' },
      });
      expect(piece.change.charged_minor).toBeLessThanOrEqual(piece.change.quoted_minor);
      expect(piece.change.sentence).toMatch(/off-hire notice N-0000[12] was given/);
    }
    takeUnits(later, { number, to: 'back' });
    expect(hire(later, number).pieces.every(({ days }) => days === 3)).toBe(true);
  });

  it('is refused where it is ahead of the clock, before the unit left, unreadable, or of a booking that has not left', async () => {
    const { context, number } = await outHouse();
    const give = (noticedAt: string) => giveOffHireNotice(context, { ...said, number, noticedAt });
    expect(give('2026-03-18T09:00:01Z')).toMatchObject(REFUSED('notice-ahead'));
    expect(give('2026-03-15T15:00:00Z')).toMatchObject(REFUSED('notice-too-early'));
    expect(give('this morning')).toMatchObject(REFUSED('moment-unreadable'));
    const held = await bookedHouse();
    const before = { ...said, number: held.number, noticedAt: '2026-03-02T07:00:00Z' };
    expect(giveOffHireNotice(held.context, before)).toMatchObject(REFUSED('no-unit-so'));
  });
});

describe('the hire of a booking', () => {
  it('is what the quote says while nothing changed, to the minor unit', async () => {
    const { context, number } = await bookedHouse();
    const { pieces } = hire(context, number);
    const quoted = pieces.reduce((sum, { change }) => sum + change.quoted_minor, 0);
    expect(pieces.reduce((sum, { change }) => sum + change.charged_minor, 0)).toBe(quoted);
    const frozen = context.database.raw
      .prepare("SELECT json_extract(frozen_json, '$.price.hire_minor') FROM quote")
      .pluck()
      .get();
    expect(quoted).toBe(frozen);
  });

  it('runs on past the last day until it is back, and follows a late return', async () => {
    const { context, number } = await outHouse();
    const late = onDay(context, '2026-03-24');
    const running = hire(late, number).pieces.filter(({ rows: mine }) => mine.length > 0);
    expect(running.every(({ end, days }) => end === 'running' && days === 9)).toBe(true);
    takeUnits(late, { number, to: 'back' });
    expect(hire(onDay(context, '2026-03-30'), number).pieces.every(({ days }) => days === 9)).toBe(true);
  });
});

describe('a late return', () => {
  const late = { serials: [], expectedBackOn: '2026-03-24', saidBy: 'R. Dunlin' };

  it('keeps the unit from others until it is expected, moves those it hits, and names those it cannot', async () => {
    const { context, number, serials } = await outHouse();
    const later = await bookAgain(context, '2026-03-23');
    const shared = later.serials.filter((serial) => serials.includes(serial));
    const [only = ''] = shared;
    keepOnly(context, only);
    const report = granted(reportLate(context, { ...late, number }));
    expect(report.serials).toEqual(serials);
    expect(report.hits.find(({ serial }) => serial === only)).toEqual({
      booking: later.number,
      customer: 'Dunlin Water',
      startsOn: '2026-03-23',
      serial: only,
      instead: null,
    });
    expect(report.hits.filter(({ instead }) => instead !== null).length).toBe(shared.length - 1);
    const model = modelOf(context, only);
    expect(freePieces(context, { window: rangeOfDays('2026-03-24', 1) })[model]).toBe(0);
  });

  it('is refused where it is in time, in the past, of nothing that is out, or of a booking that ended', async () => {
    const { context, number } = await outHouse();
    const report = (expectedBackOn: string) => reportLate(context, { ...late, number, expectedBackOn });
    expect(report('2026-03-20')).toMatchObject(REFUSED('not-late'));
    expect(report('2026-03-17')).toMatchObject(REFUSED('date-unreadable'));
    const held = await bookedHouse();
    expect(reportLate(held.context, { ...late, number: held.number })).toMatchObject(REFUSED('no-unit-so'));
    granted(cancelBooking(held.context, { number: held.number, reason: 'x' }));
    expect(reportLate(held.context, { ...late, number: held.number })).toMatchObject(REFUSED('booking-ended'));
  });

  it('counts by itself: what is out past its last day is not free today, and free after its turnaround', async () => {
    const { context, number, serials } = await outHouse();
    const [serial = ''] = serials;
    keepOnly(context, serial);
    const day = '2026-03-25';
    const free = (starts_on: string) =>
      freePieces(onDay(context, day), { window: rangeOfDays(starts_on, 1) })[modelOf(context, serial)];
    expect([free(day), free(addDays(day, 2)), free(addDays(day, 3))]).toEqual([0, 0, 1]);
    expect(number).not.toBe('');
  });
});

describe('a unit that fails', () => {
  const why = 'trips at start';

  function another(context: Context, serial: string): string {
    return String(
      context.database.raw
        .prepare(
          `SELECT serial FROM unit WHERE model_number = ? AND serial <> ? AND state = 'ready'
            AND (inspection_due_on IS NULL OR inspection_due_on > '2026-04-30')
            AND (calibration_due_on IS NULL OR calibration_due_on > '2026-04-30')
            AND serial NOT IN (SELECT unit_serial FROM booking_unit WHERE state IN ('held', 'out')) LIMIT 1`,
        )
        .pluck()
        .get(modelOf(context, serial), serial),
    );
  }

  it('on hire is swapped for one of the same model for the days that are left; one piece goes on being charged', async () => {
    const { context, number, serials } = await outHouse();
    const [serial = ''] = serials;
    const replacement = another(context, serial);
    const before = hire(context, number).pieces.length;
    expect(granted(swapUnit(context, { number, serial, replacement, why }))).toMatchObject({
      serial,
      replacement,
      lines: [],
    });
    const mine = rows(context, number);
    const old = mine.find((row) => row.unit_serial === serial);
    expect(old).toMatchObject({ state: 'swapped', out_on: HIRE.starts_on });
    expect(mine.find((row) => row.unit_serial === replacement)).toMatchObject({
      state: 'held',
      starts_on: '2026-03-18',
      ends_before: HIRE.ends_before,
      replaces_id: old?.id,
    });
    expect(findBooking(context.database.db, number)?.state).toBe('out');
    const after = hire(context, number);
    expect(after.pieces.length).toBe(before);
    expect(after.pieces[0]?.change).toMatchObject({ serials: [serial, replacement] });
    expect(after.pieces[0]?.days).toBe(5);
    const events = context.database.raw
      .prepare('SELECT after, reason, reference FROM unit_event WHERE unit_serial = ? ORDER BY id DESC LIMIT 1')
      .get(serial);
    expect(events).toEqual({ after: 'quarantine', reason: why, reference: number });
    takeUnits(onDay(context, '2026-03-18'), { number, to: 'out', serials: [replacement] });
    takeUnits(onDay(context, '2026-03-20'), { number, to: 'checked' });
    expect(closeBooking(context, { number })).toMatchObject(REFUSED('swapped-unit-away'));
    context.database.raw.prepare("UPDATE booking_unit SET back_on = '2026-03-20' WHERE unit_serial = ?").run(serial);
    granted(closeBooking(context, { number }));
  });

  it('is swapped for another model only where the rules and the independent check accept it on every line', async () => {
    const { context, number } = await bookedHouse();
    const drive = rows(context, number).find(({ unit_serial }) => roleOf(context, unit_serial) === 'drive');
    const serial = drive?.unit_serial ?? '';
    const others = context.database.raw
      .prepare(
        `SELECT min(serial) FROM unit JOIN model ON model.number = unit.model_number
         WHERE role = 'drive' AND model_number <> ? AND unit.state = 'ready'
           AND coalesce(inspection_due_on, '2027') > '2026-04-30' AND coalesce(calibration_due_on, '2027') > '2026-04-30'
         GROUP BY model_number`,
      )
      .pluck()
      .all(modelOf(context, serial));
    const answers = others.map((replacement) =>
      swapUnit(context, { number, serial, replacement: String(replacement), why }, 'trial'),
    );
    const no = answers.find((answer) => !answer.ok);
    expect(no).toMatchObject(REFUSED('stand-in-refused'));
    const yes = others.find((_, index) => answers[index]?.ok);
    console.info(`drives that could stand in: ${answers.filter(({ ok }) => ok).length} of ${answers.length}`);
    expect(yes).toBeDefined();
    const done = granted(swapUnit(context, { number, serial, replacement: String(yes), why }));
    expect(done.lines.map(({ tag }) => tag)).toEqual(['V1']);
    expect(done.lines[0]?.settings).toMatch(/highest torque at the valve \d+ N·m in gear \d/);
    const quoted = rows(context, number).find((row) => row.unit_serial === yes)?.quoted_model;
    expect(quoted).toBe(modelOf(context, serial));
  });

  it('is not swapped for one that is taken, unknown or of another kind, nor without a reason', async () => {
    const { context, number, serials } = await bookedHouse();
    const [serial = '', taken = ''] = serials;
    const swap = (replacement: string, reason = why) => swapUnit(context, { number, serial, replacement, why: reason });
    expect(swap(taken)).toMatchObject(REFUSED('unit-not-free'));
    expect(swap('NOT-HERE')).toMatchObject(REFUSED('no-such-unit'));
    expect(swap(another(context, serial), '')).toMatchObject(REFUSED('reason-missing'));
    expect(swap(another(context, ofAnotherKind(context, { serials, serial })))).toMatchObject(
      REFUSED('stand-in-of-another-kind'),
    );
    const nobody = swapUnit(context, { number, serial: 'NOT-HERE', replacement: serial, why });
    expect(nobody).toMatchObject(REFUSED('unit-not-so'));
    granted(cancelBooking(context, { number, reason: 'put off' }));
    expect(swap(another(context, serial))).toMatchObject(REFUSED('booking-ended'));
  });
});
