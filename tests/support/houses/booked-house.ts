/*
 * A demo house with one accepted quote of one valve, made once a process and cloned, and what takes its units through their steps.
 */
import { openDatabase } from '#db/client.ts';
import { findBooking, unitsOfBooking } from '#db/queries/bookings.ts';
import type { Context } from '#lib/services/context.ts';
import { acceptQuote } from '#lib/services/quotes/accept-quote.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import { stepUnits } from '#lib/services/yard/step-units.ts';
import type { BookedUnitState } from '#lib/stock/booking-life.ts';
import { granted } from '../granted.ts';
import { demoHouseContext } from './demo-house.ts';
import { planOneValve } from './one-valve.ts';

/** First day of the hire that was quoted, and the first day after it: Monday to Friday. */
export const HIRE = { starts_on: '2026-03-16', ends_before: '2026-03-21' };

export interface BookedHouse {
  readonly context: Context;
  readonly enquiryId: number;
  readonly quoteId: number;
  readonly number: string;
  readonly serials: readonly string[];
}

let made: (BookedHouse & { readonly image: Buffer }) | undefined;

export async function bookedHouse(): Promise<BookedHouse> {
  if (!made) {
    const first = await book(await demoHouseContext());
    made = { ...first, image: first.context.database.raw.serialize() };
  }
  const { image, ...house } = made;
  return { ...house, context: { ...made.context, database: openDatabase(Buffer.from(image)) } };
}

/** One more booking of the same valve in the same house; it takes other units. */
export async function bookAgain(context: Context, starts_on: string): Promise<BookedHouse> {
  return book(context, starts_on);
}

async function book(context: Context, starts_on = HIRE.starts_on): Promise<BookedHouse> {
  const site = { sources_allowed: ['battery'], crews: 1, days: 5, starts_on };
  const asked = { title: `One valve from ${starts_on}`, customer: 'Dunlin Water', site };
  const id = await planOneValve(context, asked);
  const quote = granted(await issueQuote(context, { enquiryId: id }));
  const held = granted(acceptQuote(context, { quoteId: quote.id, acceptedBy: 'R. Dunlin' }));
  return { context, enquiryId: id, quoteId: quote.id, number: held.number, serials: held.serials };
}

export function onDay(context: Context, moment: string): Context {
  const at = moment.length === 10 ? `${moment}T09:00:00Z` : moment;
  return { ...context, now: () => new Date(at) };
}

const WAY: readonly BookedUnitState[] = ['held', 'allocated', 'picked', 'out', 'back', 'checked'];

interface Taken {
  readonly number: string;
  readonly to: BookedUnitState;
  /** All of the booking where absent. */
  readonly serials?: readonly string[];
}

/** Takes units of a booking forward, step by step, as the yard does. */
export function takeUnits(context: Context, { number, to, serials }: Taken): void {
  context.database.db.transaction((tx) => {
    for (const step of WAY.slice(1, WAY.indexOf(to) + 1)) {
      const booking = findBooking(tx, number);
      if (!booking) throw new Error(`No booking ${number}.`);
      const units = unitsOfBooking(tx, booking.id).filter(
        (row) =>
          WAY.indexOf(step) === WAY.findIndex((state) => state === row.state) + 1 &&
          (serials === undefined || serials.includes(row.unit_serial)),
      );
      granted(stepUnits(tx, { context, booking, units, to: step, what: step }));
    }
  });
}
