/*
 * Papers that go with the hire of an order: its site sheets once the house has confirmed, and the return notes that were issued.
 * Invariant: the same frozen bytes as the Desk opens; only those of this order's own booking.
 * Not here: the quote and its summary (order-papers.ts).
 * Read next: ../quotes/read-paper.ts, ../yard/back/read-return-note.ts.
 */
import type { BookingRow } from '#db/queries/bookings.ts';
import { newestBookingOfEnquiry } from '#db/queries/order-hire.ts';
import { findQuote } from '#db/queries/quotes.ts';
import { notesOfBooking } from '#db/queries/return-notes.ts';
import { failed, type Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import type { DrawnPaper } from '#lib/services/quotes/draft-paper.ts';
import { optionInputs, type PapersInput } from '#lib/services/quotes/papers-of.ts';
import { readPaper } from '#lib/services/quotes/read-paper.ts';
import { readReturnNote } from '#lib/services/yard/back/read-return-note.ts';

/** R since a return note and an off-hire notice of one number were hard to tell apart; notes from before keep their N. */
const NOTE = /^[NR]-\d{1,12}$/;

export function isHirePaper(kind: string): boolean {
  return kind === 'site-sheet' || NOTE.test(kind);
}

interface HirePaperAsked {
  readonly enquiryId: number;
  readonly kind: string;
}

export function readHirePaper(desk: Context, { enquiryId, kind }: HirePaperAsked): Result<DrawnPaper> {
  const { db } = desk.database;
  const booking = newestBookingOfEnquiry(db, enquiryId);
  if (booking === undefined) return notThere();
  if (NOTE.test(kind)) {
    const isItsOwn = notesOfBooking(db, booking.id).some(({ number }) => number === kind);
    return isItsOwn ? readReturnNote(desk, kind) : notThere();
  }
  const quoteId = booking.quote_id;
  if (quoteId === null || !sheetsAreDue(booking)) return notThere();
  return readPaper(desk, { quoteId, kind: sheetKind(desk, { quoteId, slot: booking.option_slot }) });
}

/** The sheets say how to work with what comes: before the house has confirmed, nothing does. */
export function sheetsAreDue({ confirmed_at, state }: BookingRow): boolean {
  return confirmed_at !== null && state !== 'cancelled' && state !== 'lapsed';
}

/** Papers of further options are named by their place in the quote. */
function sheetKind(
  { database }: Context,
  { quoteId, slot }: { readonly quoteId: number; readonly slot: number },
): string {
  const frozen = findQuote(database.db, quoteId)?.frozen_json ?? '{}';
  const index = optionInputs(JSON.parse(frozen) as PapersInput).findIndex(({ option }) => option?.slot === slot);
  return index < 1 ? 'site-sheet' : `site-sheet-option-${index + 1}`;
}

function notThere(): Result<never> {
  return failed({ code: 'no-such-paper', sentence: 'That paper is not there yet, or not of this order.' });
}
