/*
 * The charges that a booking has come to since its last return note, worked out from what was checked in, with the Desk's word on each.
 * Invariant: worked out anew each time and proved by the independent check; a word that was said about another amount no longer holds.
 * Not here: deciding (decide-charge.ts), the note (issue-return-note.ts).
 * Read next: ../../../pricing/return-charges.ts, frozen-terms.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, unitsOfBooking } from '#db/queries/bookings.ts';
import { type DecisionRow, openDecisions } from '#db/queries/return-notes.ts';
import { type CheckedPiece, piecesOfBooking, type ReturnRow, returnsOfBooking } from '#db/queries/returns.ts';
import { ordersOfPieces, type WorkOrderRow } from '#db/queries/work-orders.ts';
import { checkReturn } from '#lib/checking/check-return.ts';
import type { Model } from '#lib/equipment/model.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { type Exchange, exchanged } from '#lib/money/exchange.ts';
import { toMinor } from '#lib/money/money.ts';
import { returnCharges } from '#lib/pricing/return-charges.ts';
import type { Cause, ReturnFact, ReturnLine } from '#lib/pricing/return-facts.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts, knownModels } from '#lib/services/house/house-facts.ts';
import { modelsTurnedOver } from '#lib/services/quotes/quote-currency.ts';
import { hasEnded, holds } from '#lib/stock/booking-life.ts';
import { bookedUnitStateOf, bookingStateOf } from '../booking-record.ts';
import { hireOfBooking } from '../hire-of-booking.ts';
import { type ChargedLoss, chargedAsLost, foundFact } from './charged-as-lost.ts';
import { type CountedPieces, countedPieces } from './counted-pieces.ts';
import { isAwaited } from './find-piece.ts';
import { type QuotedTerms, quotedTerms } from './frozen-terms.ts';
import { contaminationOf } from './return-record.ts';

export interface ChargeOf {
  /** Kind and subject, such as `repair piece 12`: the same as long as it is about the same. */
  readonly key: string;
  readonly line: ReturnLine;
  /** The Desk's word that holds; null where none was said about this amount. */
  readonly word: DecisionRow | null;
}

export interface ChargesOf {
  readonly terms: QuotedTerms;
  readonly charges: readonly ChargeOf[];
  /** Pieces that no note holds yet. */
  readonly pieces: readonly CheckedPiece[];
  /** Whether anything is still out; counted pieces are settled when nothing is. */
  readonly isAllBack: boolean;
}

interface Asked {
  readonly context: Context;
  readonly booking: BookingRow;
}

export function chargesOf(db: DbOrTx, { context, booking }: Asked): Result<ChargesOf> {
  const terms = quotedTerms(db, { context, booking });
  if (!terms.ok) return terms;
  const pieces = piecesOfBooking(db, booking.id).filter(({ note_id }) => note_id === null);
  const isAllBack = isEverythingBack(db, booking);
  // The note with which a booking closed settled all but what was lost and is found since.
  const isLast = isAllBack && !hasEnded(bookingStateOf(booking));
  const counted = isLast ? countedPieces(context, booking) : [];
  const losses = chargedAsLost(db, booking);
  const facts = factsOf({ db, context, booking, terms: terms.value, pieces, counted, isLast, losses });
  const question = {
    terms: terms.value.papers.house.pricing,
    rates: terms.value.rates,
    waiver: terms.value.waiver,
    facts,
  };
  const lines = returnCharges(question);
  const wrong = checkReturn(question, lines);
  invariant(
    wrong.length === 0,
    `The independent check does not agree with the charges: ${wrong.map(({ sentence }) => sentence).join(' ')}`,
  );
  const words = new Map(openDecisions(db, booking.id).map((row) => [row.charge, row]));
  const charges = lines.map((line): ChargeOf => {
    const key = `${line.kind} ${line.about}`;
    const said = words.get(key);
    return { key, line, word: said !== undefined && said.proposed_minor === line.net_minor ? said : null };
  });
  return ok({ terms: terms.value, charges, pieces, isAllBack });
}

/** Nothing waits to leave, nothing is out, and what was lost or swapped is accounted for. */
export function isEverythingBack(db: DbOrTx, booking: BookingRow): boolean {
  return unitsOfBooking(db, booking.id).every(
    (unit) => unit.state === 'lost' || (!holds(bookedUnitStateOf(unit)) && !isAwaited(unit)),
  );
}

interface FactsAsked extends Asked {
  readonly db: DbOrTx;
  readonly terms: QuotedTerms;
  readonly pieces: readonly CheckedPiece[];
  readonly counted: readonly CountedPieces[];
  /** The note that closes the booking: it settles what never left and what is counted, too. */
  readonly isLast: boolean;
  readonly losses: ReadonlyMap<number, ChargedLoss>;
}

function factsOf(asked: FactsAsked): readonly ReturnFact[] {
  const { db, context, booking, terms, pieces, counted } = asked;
  const { exchange } = terms;
  const others = exchange === null ? knownModels(context) : modelsTurnedOver(knownModels(context), exchange);
  const models = new Map([...others, ...terms.papers.models].map((model) => [model.number, model]));
  const orders =
    pieces.length === 0
      ? []
      : ordersOfPieces(
          db,
          pieces.map(({ id }) => id),
        );
  const returns = new Map(returnsOfBooking(db, booking.id).map((row) => [row.id, row]));
  return [
    ...pieces.flatMap((piece) =>
      pieceFacts({
        piece,
        of: returns.get(piece.return_id),
        model: models.get(piece.model),
        exchange,
        orders: orders.filter(({ piece_id }) => piece_id === piece.id),
      }),
    ),
    ...foundFacts(asked, models),
    ...hireFacts(asked),
    ...counted.flatMap((one) => countedFacts({ counted: one, model: models.get(one.model), terms })),
  ];
}

/** What was charged as lost before and is here now. */
function foundFacts(asked: FactsAsked, models: ReadonlyMap<string, Model>): readonly ReturnFact[] {
  const { db, context, booking, terms, pieces, losses } = asked;
  const house =
    terms.papers.house.terms.hireUntilFound ?? houseFacts(context, terms.papers.site.startsOn).terms.hireUntilFound;
  return pieces.flatMap((piece) => {
    const loss = losses.get(piece.booking_unit_id);
    const model = models.get(piece.model);
    if (loss === undefined || model === undefined) return [];
    return [foundFact(db, { context, booking, hireUntilFound: house ?? 'charged', piece, loss, model })];
  });
}

/** Hire of what these pieces end; with the last note also of what never left and of counted pieces. */
function hireFacts({ db, context, booking, pieces, isLast, losses }: FactsAsked): readonly ReturnFact[] {
  const hire = hireOfBooking(db, { context, booking })?.pieces ?? [];
  const ended = pieces.filter(({ booking_unit_id }) => !losses.has(booking_unit_id));
  const here = new Set(ended.map(({ booking_unit_id }) => booking_unit_id));
  const settled = new Set(
    piecesOfBooking(db, booking.id).flatMap(({ note_id, booking_unit_id }) =>
      note_id === null ? [] : [booking_unit_id],
    ),
  );
  return hire
    .filter(({ rows }) => {
      const last = rows.at(-1);
      return (last !== undefined && here.has(last)) || (isLast && (last === undefined || !settled.has(last)));
    })
    .map(({ change }) => change);
}

interface PieceAsked {
  readonly piece: CheckedPiece;
  readonly of: ReturnRow | undefined;
  readonly model: Model | undefined;
  readonly orders: readonly WorkOrderRow[];
  /** Parts are written down in the house's own currency. */
  readonly exchange: Exchange | null;
}

function pieceFacts({ piece, of, model, orders, exchange }: PieceAsked): readonly ReturnFact[] {
  invariant(of !== undefined && model !== undefined, `Piece ${piece.id} belongs to no return or no model.`);
  const about = { about: `piece ${piece.id}`, number: piece.model, name: piece.name, serials: [piece.serial] };
  const cause = causeOf(piece);
  if (piece.condition === 'missing')
    return [{ ...about, kind: 'loss', count: 1, replacement_minor: model.replacement_minor, cause }];
  const contamination = contaminationOf(of);
  const soil = contamination !== 'none' ? contamination : piece.condition === 'dirty' ? 'dirty' : null;
  const isBroken = piece.condition === 'damaged' || piece.missing_parts !== '';
  return [
    ...(soil === null ? [] : [{ ...about, kind: 'cleaning', soil } as const]),
    ...(isBroken
      ? [
          {
            ...about,
            kind: 'repair',
            ...repairOf({ piece, orders, exchange }),
            replacement_minor: model.replacement_minor,
            cause,
          } as const,
        ]
      : []),
  ];
}

/** What the workshop wrote once it is done; until then what was judged at the return. */
function repairOf({ piece, orders, exchange }: Pick<PieceAsked, 'piece' | 'orders' | 'exchange'>) {
  const charged = (minor: number) => (exchange === null ? toMinor(minor) : exchanged(toMinor(minor), exchange));
  const done = orders.filter(({ kind, state }) => kind === 'repair' && state === 'done');
  const isOpen = orders.some(({ kind, state }) => kind === 'repair' && (state === 'open' || state === 'doing'));
  const broken = [piece.note, piece.missing_parts === '' ? '' : `missing from it: ${piece.missing_parts}`]
    .filter((part) => part !== '')
    .join('; ');
  if (done.length === 0 || isOpen)
    return {
      hours: piece.repair_hours,
      parts_minor: charged(piece.repair_parts_minor),
      words: `${broken} (as judged at the return)`,
    };
  return {
    hours: Math.round(done.reduce((sum, { hours }) => sum + hours, 0) * 100) / 100,
    parts_minor: charged(done.reduce((sum, { parts_minor }) => sum + parts_minor, 0)),
    words: `${broken} (as repaired, ${done.map(({ number }) => number).join(', ')})`,
  };
}

export function causeOf({ cause, cause_words }: Pick<CheckedPiece, 'cause' | 'cause_words'>): Cause {
  if (cause === 'covered') return { kind: 'covered' };
  return cause === 'left out' ? { kind: 'left out', words: cause_words } : { kind: 'not known' };
}

interface CountedAsked {
  readonly counted: CountedPieces;
  readonly model: Model | undefined;
  readonly terms: QuotedTerms;
}

/** What is sold is charged as used; of what is hired the missing ones are lost. */
function countedFacts({ counted, model, terms }: CountedAsked): readonly ReturnFact[] {
  invariant(model !== undefined, `${counted.model} is no model.`);
  const about = { about: `model ${counted.model}`, number: counted.model, name: counted.name, serials: [] };
  const missing = counted.sent - counted.back;
  if (counted.isSold) {
    const quoted = terms.papers.outcome.kits
      .flatMap(({ items }) => items)
      .filter(({ item }) => item === counted.model)
      .reduce((sum, { count }) => sum + count, 0);
    return [
      { ...about, kind: 'sold', quoted, used: counted.sent - counted.unused, price_minor: model.replacement_minor },
    ];
  }
  if (missing <= 0) return [];
  const said = counted.returns.findLast(({ cause }) => cause !== 'not known');
  const cause: Cause = said === undefined ? { kind: 'not known' } : causeOf(said);
  return [{ ...about, kind: 'loss', count: missing, replacement_minor: model.replacement_minor, cause }];
}
