/*
 * What a return note says: the returns since the last note piece by piece, what is still out, and the charges as the Desk decided them.
 * Invariant: made from the same facts that were charged; frozen with the note, so that the paper can be proved again.
 * Not here: drawing and keeping it (issue-return-note.ts).
 * Read next: ../../../documents/papers/return-inputs.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, unitsOfBooking } from '#db/queries/bookings.ts';
import { type CheckedPiece, photosOfPieces, type ReturnRow, returnsOfBooking } from '#db/queries/returns.ts';
import { ordersOfPieces } from '#db/queries/work-orders.ts';
import type { ArrivalInput, PieceInput, ReturnMoney, ReturnNoteInput } from '#lib/documents/papers/return-inputs.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { DecidedReturn } from '#lib/pricing/return-decisions.ts';
import { type Context, today } from '#lib/services/context.ts';
import { knownModels } from '#lib/services/house/house-facts.ts';
import { ownWords, paperNames } from '#lib/services/quotes/paper-names.ts';
import { type PapersInput, paperContext } from '#lib/services/quotes/papers-of.ts';
import { CONDITIONS } from '#lib/stock/check-in.ts';
import { unitWith } from '../unit-places.ts';
import { chargedAsLost } from './charged-as-lost.ts';
import type { ChargesOf } from './charges-of.ts';
import { countedPieces } from './counted-pieces.ts';
import { isAwaited } from './find-piece.ts';
import { offHireNotices } from './off-hire-told.ts';
import { contaminationWords } from './return-record.ts';

export interface NoteAsked {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly number: string;
  readonly charges: ChargesOf;
  readonly decided: DecidedReturn;
}

export function returnNoteInput(db: DbOrTx, asked: NoteAsked): ReturnNoteInput {
  const { context, booking, number, charges, decided } = asked;
  const { papers, quote, waiver } = charges.terms;
  const returns = returnsOfBooking(db, booking.id).filter(({ id }) =>
    charges.pieces.some(({ return_id }) => return_id === id),
  );
  return {
    context: { ...paperContext(papers), number, issuedOn: today(context) },
    bookingNumber: booking.number,
    quote: `${quote.number} ${quote.revision}`,
    orderNumber: booking.order_number,
    refersTo: earlierNotes(db, { booking, charges }),
    waiver,
    arrivals: returns.map((row) => arrival(db, { ...asked, row })),
    offHire: offHireNotices(db, booking),
    stillOut: stillOut(db, { context, booking }),
    charges: money(decided, papers.house.pricing.taxCategories),
    exchange: charges.terms.exchange,
    ...writtenAs(papers, { booking, quote: `${quote.number} ${quote.revision}`, charges, returns }),
  };
}

interface OnNote {
  readonly booking: BookingRow;
  readonly quote: string;
  readonly charges: ChargesOf;
  readonly returns: readonly ReturnRow[];
}

/** In the language and form that were frozen with the quote; what the yard wrote stays. */
function writtenAs(
  papers: PapersInput,
  { booking, quote, charges, returns }: OnNote,
): Pick<ReturnNoteInput, 'written'> {
  const { language = 'en', forms } = papers;
  if (language === 'en' || forms === undefined) return {};
  const names = [
    ...paperNames(papers),
    ...[booking.number, booking.order_number, quote],
    ...returns.flatMap((row) => [row.brought_by, row.contamination_note]),
    ...charges.pieces.flatMap(({ serial, note, missing_parts }) => [serial, note, missing_parts]),
    ...charges.charges.flatMap(({ word }) => word?.reason ?? []),
  ].filter((name) => name !== '');
  return { written: { language, forms, names: [...new Set(names)], own: [...ownWords(papers)] } };
}

/** Of what was found: the note on which it was charged as lost. */
function earlierNotes(db: DbOrTx, { booking, charges }: Pick<NoteAsked, 'booking' | 'charges'>): readonly string[] {
  const losses = chargedAsLost(db, booking);
  const notes = charges.pieces.flatMap(({ booking_unit_id }) => losses.get(booking_unit_id)?.note.number ?? []);
  return [...new Set(notes)].toSorted();
}

interface ArrivalAsked extends NoteAsked {
  readonly row: ReturnRow;
}

function arrival(db: DbOrTx, { context, booking, charges, row }: ArrivalAsked): ArrivalInput {
  const pieces = charges.pieces.filter(({ return_id }) => return_id === row.id);
  const depot = charges.terms.papers.house.depots.find(({ code }) => code === row.depot);
  return {
    sequence: row.sequence,
    arrivedOn: row.arrived_on,
    depot: depot?.name ?? row.depot,
    broughtBy: row.brought_by,
    contamination: contaminationWords(row),
    pieces: pieces.map((piece) => pieceInput(db, piece)),
    counted: countedPieces(context, booking).flatMap((one) =>
      one.returns
        .filter(({ returnId }) => returnId === row.id)
        .map(({ back, unused }) => ({
          number: one.model,
          name: one.name,
          sent: one.sent,
          back,
          unused,
          sold: one.isSold ? ('sold' as const) : ('hired' as const),
        })),
    ),
  };
}

function pieceInput(db: DbOrTx, piece: CheckedPiece): PieceInput {
  const condition = CONDITIONS.find((one) => one === piece.condition);
  invariant(condition !== undefined, `A piece cannot come back ${piece.condition}.`);
  const unit = unitWith(db, piece.serial);
  const orders = ordersOfPieces(db, [piece.id]).filter(({ state }) => state !== 'withdrawn');
  const state = unit.ok ? unit.value.state : '';
  return {
    serial: piece.serial,
    name: piece.name,
    condition,
    runHours: piece.run_hours,
    missingParts: piece.missing_parts,
    note: piece.note,
    photos: photosOfPieces(db, [piece.id]).flatMap(({ id, removed_at }) => (removed_at === null ? [`P-${id}`] : [])),
    sawOverload: piece.saw_overload,
    went: condition === 'missing' ? '—' : [state, ...orders.map((order) => order.number)].join(', '),
  };
}

interface OutAsked {
  readonly context: Context;
  readonly booking: BookingRow;
}

export function stillOut(db: DbOrTx, { context, booking }: OutAsked): ReturnNoteInput['stillOut'] {
  const names = new Map(knownModels(context).map((model) => [model.number, model.name]));
  return unitsOfBooking(db, booking.id)
    .filter((row) => row.state !== 'lost' && isAwaited(row))
    .map((row) => {
      const unit = unitWith(db, row.unit_serial);
      const name = unit.ok ? (names.get(unit.value.model_number) ?? unit.value.model_number) : '';
      return { name, mark: row.unit_serial, count: 1, due: lastDay(row.ends_before) };
    });
}

/** The last day that still belongs to the hire. */
function lastDay(endsBefore: IsoDate): IsoDate {
  return new Date(Date.parse(`${endsBefore}T00:00:00Z`) - 86_400_000).toISOString().slice(0, 10);
}

function money(
  decided: DecidedReturn,
  categories: readonly { readonly code: string; readonly reason?: string }[],
): ReturnMoney {
  return {
    currency: decided.currency,
    lines: decided.lines.map((line) => ({
      label: `${LABELS[line.kind]}: ${line.name}${line.serials.length > 0 ? ` ${line.serials.join(', ')}` : line.number === '' ? '' : ` (${line.number})`}`,
      how: line.sentence,
      remark: line.remark,
      quantity: line.quantity,
      taxCategory: line.tax,
      net_minor: line.net_minor,
    })),
    taxes: decided.taxes.map((tax) => {
      const reason = categories.find(({ code }) => code === tax.code)?.reason;
      return {
        category: tax.code,
        label: tax.name,
        rate_percent: tax.percent,
        base_minor: tax.taxable_minor,
        tax_minor: tax.tax_minor,
        ...(reason === undefined ? {} : { reason }),
      };
    }),
    net_minor: decided.net_minor,
    tax_minor: decided.tax_minor,
    gross_minor: decided.gross_minor,
  };
}

export const LABELS: Readonly<Record<DecidedReturn['lines'][number]['kind'], string>> = {
  'more hire': 'More hire',
  'less hire': 'Hire given back',
  waiver: 'On more or less hire',
  cleaning: 'Cleaning',
  repair: 'Repair',
  loss: 'Loss',
  consumed: 'Used up',
  unused: 'Unused',
  found: 'Loss given back',
  'until found': 'Hire until found',
};
