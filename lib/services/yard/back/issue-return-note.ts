/*
 * Issues a return note when the Desk has said its word on every charge; the booking closes with the note on which nothing is out any more.
 * Invariant: the note is frozen with its bytes and hash; what stands on it is settled, and what was changed while it was drawn refuses it.
 * Not here: what it says (return-note-input.ts), deciding charges (decide-charge.ts).
 * Read next: read-return-note.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { BookingRow } from '#db/queries/bookings.ts';
import { peekNumber, takeNumber } from '#db/queries/house.ts';
import { insertNote, putDecisionsOnNote } from '#db/queries/return-notes.ts';
import { changePiece } from '#db/queries/returns.ts';
import { checkReturnTotals } from '#lib/checking/check-return.ts';
import { returnPaper } from '#lib/documents/papers/return-paper.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { toMinor } from '#lib/money/money.ts';
import {
  type DecidedLine,
  type DecidedReturn,
  type Decision,
  decide,
  totalReturn,
} from '#lib/pricing/return-decisions.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { sha256 } from '#lib/services/sha256.ts';
import { hasEnded } from '#lib/stock/booking-life.ts';
import { drawPaper } from '#lib/workers/draw-paper.ts';
import { bookingNumbered, bookingStateOf } from '../booking-record.ts';
import { endBooking } from '../end-booking.ts';
import { type ChargeOf, type ChargesOf, chargesOf } from './charges-of.ts';
import { whoIs } from './open-return.ts';
import { returnNoteInput } from './return-note-input.ts';
import { mayBeSettled } from './return-record.ts';
import { takeOffShelves } from './take-off-shelves.ts';

export interface IssuedNote {
  readonly number: string;
  readonly grossMinor: number;
  readonly currency: string;
  readonly isClosed: boolean;
}

export async function issueReturnNote(
  context: Context,
  input: { readonly number: string },
): Promise<Result<IssuedNote>> {
  const allowed = authorise(context, 'decide charges');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const ready = readyNote(db, { context, number: input.number });
  if (!ready.ok) return ready;
  const frozen = JSON.stringify(ready.value.paper);
  const bytes = Buffer.from(await drawPaper(returnPaper(ready.value.paper)));
  return db.transaction(
    (tx): Result<IssuedNote> => {
      // Drawing took a moment: what is on the paper must still be what there is.
      const again = readyNote(tx, { context, number: input.number });
      if (!again.ok) return again;
      if (JSON.stringify(again.value.paper) !== frozen)
        return failed({
          code: 'changed-meanwhile',
          sentence: 'Something was checked in or decided while the note was drawn: issue it again.',
        });
      return write(tx, { context, ready: again.value, frozen, bytes });
    },
    { behavior: 'immediate' },
  );
}

interface NoteWanted {
  readonly context: Context;
  readonly number: string;
}

interface ReadyNote {
  readonly booking: BookingRow;
  readonly charges: ChargesOf;
  readonly decided: DecidedReturn;
  readonly noteNumber: string;
  readonly paper: ReturnType<typeof returnNoteInput>;
}

function readyNote(db: DbOrTx, { context, number }: NoteWanted): Result<ReadyNote> {
  const booking = bookingNumbered(db, number);
  if (!booking.ok) return booking;
  const open = mayBeSettled(db, booking.value);
  if (!open.ok) return open;
  const charges = chargesOf(db, { context, booking: booking.value });
  if (!charges.ok) return charges;
  if (charges.value.pieces.length === 0)
    return failed({ code: 'nothing-to-note', sentence: 'Nothing came back since the last note.' });
  const undecided = charges.value.charges.filter(({ word }) => word === null);
  if (undecided.length > 0)
    return failed({
      code: 'charges-undecided',
      sentence: `${undecided.length} ${undecided.length === 1 ? 'charge waits' : 'charges wait'} for a word: approve, change or strike each.`,
    });
  const decided = decidedReturn(charges.value);
  if (!decided.ok) return decided;
  const noteNumber = `R-${String(peekNumber(db, 'return note')).padStart(5, '0')}`;
  const asked = { context, booking: booking.value, number: noteNumber, charges: charges.value, decided: decided.value };
  return ok({ ...asked, noteNumber, paper: returnNoteInput(db, asked) });
}

/** The charges with the words that were said on them, and what they come to; proved by the independent check. */
export function decidedReturn({ charges, terms }: ChargesOf): Result<DecidedReturn> {
  const { currency, taxCategories } = terms.papers.house.pricing;
  const lines: DecidedLine[] = [];
  for (const charge of charges) {
    const line = decide({ line: charge.line, decision: decisionOf(charge), currency });
    if (!line.ok) return line;
    lines.push(line.value);
  }
  const decided = totalReturn({ lines, currency, categories: taxCategories });
  const wrong = checkReturnTotals(terms.papers.house.pricing, decided);
  invariant(
    wrong.length === 0,
    `The independent check does not agree: ${wrong.map(({ sentence }) => sentence).join(' ')}`,
  );
  return ok(decided);
}

export function decisionOf({ word }: ChargeOf): Decision {
  if (word === null || word.decision === 'approved') return { kind: 'approved' };
  if (word.decision === 'struck') return { kind: 'struck', reason: word.reason };
  return { kind: 'changed', net_minor: toMinor(word.net_minor), reason: word.reason };
}

interface Writing {
  readonly context: Context;
  readonly ready: ReadyNote;
  readonly frozen: string;
  readonly bytes: Buffer;
}

function write(tx: DbOrTx, { context, ready, frozen, bytes }: Writing): Result<IssuedNote> {
  const { booking, charges, decided, noteNumber } = ready;
  takeNumber(tx, 'return note');
  const noteId = insertNote(tx, {
    number: noteNumber,
    booking_id: booking.id,
    frozen_json: frozen,
    bytes,
    sha256: sha256(bytes),
    currency: decided.currency,
    gross_minor: decided.gross_minor,
    issued_at: timestamp(context),
    ...whoIs(context),
  });
  for (const { id } of charges.pieces) changePiece(tx, { id, set: { note_id: noteId } });
  putDecisionsOnNote(tx, { bookingId: booking.id, noteId });
  const closes = charges.isAllBack && !hasEnded(bookingStateOf(booking));
  if (closes) {
    takeOffShelves(tx, { context, booking });
    const closed = endBooking(tx, { context, booking, to: 'closed', why: `return note ${noteNumber}` });
    invariant(closed.ok, closed.ok ? '' : closed.reason.sentence);
  }
  const detail = {
    note: noteNumber,
    sha256: sha256(bytes),
    gross_minor: decided.gross_minor,
    closed: closes,
  };
  logChange(tx, { context, deed: { action: 'return note issued', subject: `booking ${booking.number}`, detail } });
  return ok({
    number: noteNumber,
    grossMinor: decided.gross_minor,
    currency: decided.currency,
    isClosed: closes,
  });
}
