/*
 * The charges of a booking as the Desk decides them: each line with how it came about, the word on it, and what the note would come to.
 * Invariant: reads only; figures are those of charges-of.ts.
 * Not here: deciding (decide-charge.ts).
 * Read next: charges-of.ts.
 */
import { type NoteRow, notesOfBooking } from '#db/queries/return-notes.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import type { Exchange } from '#lib/money/exchange.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { hasEnded } from '#lib/stock/booking-life.ts';
import { bookingNumbered, bookingStateOf } from '../booking-record.ts';
import { type ChargeOf, type ChargesOf, chargesOf } from './charges-of.ts';
import { decidedReturn } from './issue-return-note.ts';
import { LABELS } from './return-note-input.ts';
import { mayBeSettled } from './return-record.ts';

export interface ChargeView {
  readonly key: string;
  readonly about: string;
  readonly label: string;
  readonly name: string;
  readonly mark: string;
  readonly sentence: string;
  readonly quantity: number;
  readonly proposedMinor: number;
  readonly tax: string;
  readonly open: 'cause' | 'price' | null;
  /** Whether how it happened decides on the waiver. */
  readonly asksCause: boolean;
  readonly word: {
    readonly decision: string;
    readonly netMinor: number;
    readonly reason: string;
    readonly who: string;
  } | null;
}

export interface NoteView {
  readonly number: string;
  readonly issuedAt: string;
  readonly who: string;
  readonly grossMinor: number;
  readonly currency: string;
}

export interface ChargesView {
  readonly number: string;
  readonly currency: string;
  /** Where another currency than the house's own was quoted: the rate of the quote. */
  readonly exchange: Exchange | null;
  readonly waiver: 'taken' | 'declined';
  readonly leavesOut: readonly string[];
  readonly charges: readonly ChargeView[];
  /** Pieces that came back and stand on no note yet. */
  readonly pieces: number;
  /** Whether the booking closes with the next note. */
  readonly closes: boolean;
  /** What the note would come to; null while a charge waits for a word. */
  readonly total: { readonly net: number; readonly tax: number; readonly gross: number } | null;
  readonly notes: readonly NoteView[];
  readonly mayDecide: boolean;
}

export function openCharges(context: Context, number: string): Result<ChargesView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const booking = bookingNumbered(db, number);
  if (!booking.ok) return booking;
  const notes = notesOfBooking(db, booking.value.id).map(noteView);
  const found = chargesOf(db, { context, booking: booking.value });
  if (!found.ok) return found;
  const isOver = !mayBeSettled(db, booking.value).ok;
  const closes = !hasEnded(bookingStateOf(booking.value));
  const { terms, charges, pieces, isAllBack } = found.value;
  const { pricing } = terms.papers.house;
  return ok({
    number,
    currency: pricing.currency,
    exchange: terms.exchange,
    waiver: terms.waiver,
    leavesOut: pricing.waiver.leavesOut,
    charges: isOver || pieces.length === 0 ? [] : charges.map((charge) => chargeView(charge, terms.waiver)),
    pieces: pieces.length,
    closes: closes && isAllBack,
    total: totalOf(found.value),
    notes,
    mayDecide: authorise(context, 'decide charges').ok && !isOver,
  });
}

function chargeView({ key, line, word }: ChargeOf, waiver: ChargesView['waiver']): ChargeView {
  return {
    key,
    about: line.about,
    label: LABELS[line.kind],
    name: line.name,
    mark: line.serials.length > 0 ? line.serials.join(', ') : line.number,
    sentence: line.sentence,
    quantity: line.quantity,
    proposedMinor: line.net_minor,
    tax: line.tax,
    open: line.open,
    asksCause: waiver === 'taken' && (line.kind === 'repair' || line.kind === 'loss'),
    word:
      word === null ? null : { decision: word.decision, netMinor: word.net_minor, reason: word.reason, who: word.who },
  };
}

function totalOf(charges: ChargesOf): ChargesView['total'] {
  if (charges.charges.some(({ word }) => word === null)) return null;
  const decided = decidedReturn(charges);
  if (!decided.ok) return null;
  const { net_minor, tax_minor, gross_minor } = decided.value;
  return { net: net_minor, tax: tax_minor, gross: gross_minor };
}

function noteView({ number, issued_at, who, gross_minor, currency }: NoteRow): NoteView {
  return { number, issuedAt: issued_at, who, grossMinor: gross_minor, currency };
}
