import { describe, expect, it } from 'vitest';
import { movesOfBooking } from '#db/queries/booking-history.ts';
import { findBooking, unitsOfBooking } from '#db/queries/bookings.ts';
import type { Context } from '#lib/services/context.ts';
import { freePieces } from '#lib/services/house/house-facts.ts';
import { acceptQuote } from '#lib/services/quotes/accept-quote.ts';
import { listIssuedQuotes } from '#lib/services/quotes/list-issued-quotes.ts';
import { cancelBooking } from '#lib/services/yard/cancel-booking.ts';
import { closeBooking } from '#lib/services/yard/close-booking.ts';
import { confirmBooking } from '#lib/services/yard/confirm-booking.ts';
import { expireHolds } from '#lib/services/yard/expire-holds.ts';
import { releaseUnits } from '#lib/services/yard/release-units.ts';
import { granted } from '#tests/support/granted.ts';
import { bookedHouse, HIRE, onDay, takeUnits } from '#tests/support/houses/booked-house.ts';

const REFUSED = (code: string) => ({ ok: false, reason: { code } });

function stateOf(context: Context, number: string): string | undefined {
  return findBooking(context.database.db, number)?.state;
}

function unitStates(context: Context, number: string): readonly string[] {
  const booking = findBooking(context.database.db, number);
  return booking ? unitsOfBooking(context.database.db, booking.id).map(({ state }) => state) : [];
}

describe('a booking that is held', () => {
  it('holds counted pieces beside its units, and both are not free to others', async () => {
    const { context, number, enquiryId } = await bookedHouse();
    const free = freePieces(context, { window: HIRE });
    const beside = freePieces(context, { window: HIRE, enquiryId });
    const taken = Object.entries(beside).filter(([model, count]) => (free[model] ?? 0) < count);
    expect(taken.length).toBeGreaterThan(2);
    const booking = findBooking(context.database.db, number);
    expect(booking).toMatchObject({ state: 'held', held_until: '2026-03-07T23:59:59.000Z' });
    expect(booking?.depot).not.toBe('');
  });

  it('lapses when nobody confirms it, is free before anybody wrote that down, and its quote is open again', async () => {
    const { context, number, enquiryId, quoteId } = await bookedHouse();
    const before = onDay(context, '2026-03-07T23:59:58Z');
    const after = onDay(context, '2026-03-07T23:59:59Z');
    expect(expireHolds(before)).toEqual([]);
    expect(freePieces(before, { window: HIRE })).not.toEqual(freePieces(after, { window: HIRE }));
    expect(freePieces(after, { window: HIRE })).toEqual(freePieces(before, { window: HIRE, enquiryId }));
    expect(expireHolds(after)).toEqual([number]);
    expect(expireHolds(after)).toEqual([]);
    expect(stateOf(context, number)).toBe('lapsed');
    expect(new Set(unitStates(context, number))).toEqual(new Set(['released']));
    expect(listIssuedQuotes(after, enquiryId)[0]).toMatchObject({ state: 'issued', standing: { kind: 'open' } });
    expect(granted(acceptQuote(after, { quoteId })).number).not.toBe(number);
  });

  it('does not stand in the way of who books after its last moment, though nobody wrote it down', async () => {
    const { context, number, quoteId, serials } = await bookedHouse();
    const after = onDay(context, '2026-03-10');
    const again = granted(acceptQuote(after, { quoteId }));
    expect(again.number).not.toBe(number);
    expect(again.serials).toEqual(serials);
    expect(stateOf(context, number)).toBe('lapsed');
  });

  it('is confirmed once, and then no longer runs out', async () => {
    const { context, number } = await bookedHouse();
    expect(granted(confirmBooking(context, { number }))).toEqual({ number, state: 'confirmed' });
    expect(confirmBooking(context, { number })).toMatchObject(REFUSED('booking-state-already'));
    expect(expireHolds(onDay(context, '2026-03-15'))).toEqual([]);
    expect(findBooking(context.database.db, number)).toMatchObject({ held_until: null, state: 'confirmed' });
    expect(confirmBooking(context, { number: 'B-99999' })).toMatchObject(REFUSED('no-such-booking'));
    expect(confirmBooking({ ...context, actor: { ...context.actor, role: 'contractor' } }, { number })).toMatchObject(
      REFUSED('not-allowed'),
    );
  });

  it('cannot be confirmed once it has run out', async () => {
    const { context, number } = await bookedHouse();
    expect(confirmBooking(onDay(context, '2026-03-10'), { number })).toMatchObject(REFUSED('booking-ended'));
  });
});

describe('a booking', () => {
  it('is cancelled with a reason, sets everything free, and can then do nothing more', async () => {
    const { context, number, serials, enquiryId } = await bookedHouse();
    expect(cancelBooking(context, { number, reason: ' ' })).toMatchObject(REFUSED('reason-missing'));
    expect(granted(cancelBooking(context, { number, reason: 'works put off' })).freed).toEqual(serials);
    expect(cancelBooking(context, { number, reason: 'again' })).toMatchObject(REFUSED('booking-state-already'));
    expect(closeBooking(context, { number })).toMatchObject(REFUSED('booking-ended'));
    expect(releaseUnits(context, { number, serials, why: 'x' })).toMatchObject(REFUSED('booking-ended'));
    expect(freePieces(context, { window: HIRE })).toEqual(freePieces(context, { window: HIRE, enquiryId }));
  });

  it('cannot be cancelled once something has left', async () => {
    const { context, number, serials } = await bookedHouse();
    takeUnits(context, { number, to: 'out', serials: serials.slice(0, 1) });
    expect(stateOf(context, number)).toBe('out');
    expect(cancelBooking(context, { number, reason: 'late' })).toMatchObject(REFUSED('booking-under-way'));
  });

  it('gives up part of what it holds before it leaves, never all of it', async () => {
    const { context, number, serials } = await bookedHouse();
    const [first = ''] = serials;
    const give = (which: readonly string[], why = 'one crew less') =>
      releaseUnits(context, { number, serials: which, why });
    expect(give([])).toMatchObject(REFUSED('units-missing'));
    expect(give([first], '')).toMatchObject(REFUSED('reason-missing'));
    expect(give(['NOT-HERE'])).toMatchObject(REFUSED('unit-not-so'));
    expect(give(serials)).toMatchObject(REFUSED('nothing-left'));
    expect(granted(give([first])).freed).toEqual([first]);
    expect(give([first])).toMatchObject(REFUSED('unit-not-so'));
    takeUnits(context, { number, to: 'out' });
    expect(give(serials.slice(1, 2))).toMatchObject(REFUSED('unit-not-so'));
  });

  it('goes out and back in parts, is closed when all is checked in, and tells every step with who and when', async () => {
    const { context, number, serials } = await bookedHouse();
    granted(confirmBooking(context, { number }));
    takeUnits(onDay(context, '2026-03-16'), { number, to: 'picked' });
    expect(stateOf(context, number)).toBe('picked');
    takeUnits(onDay(context, '2026-03-16'), { number, to: 'out', serials: serials.slice(0, 1) });
    expect(stateOf(context, number)).toBe('out');
    takeUnits(onDay(context, '2026-03-17'), { number, to: 'out' });
    expect(closeBooking(context, { number })).toMatchObject(REFUSED('units-not-back'));
    takeUnits(onDay(context, '2026-03-20'), { number, to: 'back' });
    expect(stateOf(context, number)).toBe('back');
    expect(closeBooking(context, { number })).toMatchObject(REFUSED('units-unchecked'));
    takeUnits(onDay(context, '2026-03-21'), { number, to: 'checked' });
    expect(granted(closeBooking(onDay(context, '2026-03-21'), { number }))).toEqual({ number });
    const booking = findBooking(context.database.db, number);
    expect(booking).toMatchObject({ state: 'closed', closed_at: '2026-03-21T09:00:00.000Z' });
    const moves = movesOfBooking(context.database.db, booking?.id ?? 0);
    expect(moves.filter(({ unit_serial }) => unit_serial === null).map(({ to_state }) => to_state)).toEqual([
      'held',
      'confirmed',
      'allocated',
      'picked',
      'out',
      'back',
      'closed',
    ]);
    expect(moves.every(({ who, at }) => who === 'Test desk' && at !== '')).toBe(true);
    const unit = context.database.raw.prepare('SELECT state FROM unit WHERE serial = ?').pluck().get(serials[0]);
    expect(unit).toBe('back');
  });
});
