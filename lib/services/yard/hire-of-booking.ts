/*
 * The hire of a booking, piece by piece, by the days each was really on hire, beside what its quote charged.
 * Invariant: rates, terms, discounts and waiver are those the quote was frozen with; a unit and the one that took its place are one piece.
 * Not here: cleaning, repair and loss (the return), and the Desk's word on any of it.
 * Read next: ../../pricing/hire-charge.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { movesOfBooking, noticedUnits, type OffHireNoticeRow } from '#db/queries/booking-history.ts';
import {
  type BookingItemRow,
  type BookingRow,
  type BookingUnitRow,
  itemsOfBooking,
  unitsOfBooking,
} from '#db/queries/bookings.ts';
import { findQuote } from '#db/queries/quotes.ts';
import { findUnit } from '#db/queries/stock.ts';
import type { Model } from '#lib/equipment/model.ts';
import { type Minor, toMinor } from '#lib/money/money.ts';
import { NO_DISCOUNTS } from '#lib/pricing/discounts.ts';
import { type HireCharge, type HiredPiece, type HireTerms, hireCharge } from '#lib/pricing/hire-charge.ts';
import type { PricingTerms } from '#lib/pricing/terms.ts';
import { type Context, today } from '#lib/services/context.ts';
import { optionOf, type PapersInput } from '#lib/services/quotes/papers-of.ts';
import { chargedAsQuoted } from '#lib/services/quotes/quote-currency.ts';

export interface PieceHire extends HireCharge {
  /** Rows of the booking that make the piece, in their order; none for counted pieces. */
  readonly rows: readonly number[];
  readonly count: number;
}

export interface BookingHire {
  readonly pieces: readonly PieceHire[];
  readonly terms: PricingTerms;
  readonly waiver: 'taken' | 'declined';
  readonly quoted_minor: Minor;
  readonly chargeEnds: HireTerms['chargeEnds'];
}

interface HireAsked {
  readonly context: Context;
  readonly booking: BookingRow;
  /** Row of a piece that was lost and found, to be reckoned as if it had only come back late. */
  readonly found?: number;
}

/** Null where the booking has no quote, so nothing is charged. */
export function hireOfBooking(db: DbOrTx, { context, booking, found }: HireAsked): BookingHire | null {
  const quote = booking.quote_id === null ? undefined : findQuote(db, booking.quote_id);
  if (!quote) return null;
  const papers = JSON.parse(quote.frozen_json) as PapersInput;
  const frozen = chargedAsQuoted(optionOf(papers, booking.option_slot) ?? papers);
  const asked: Frozen = { db, booking, frozen, found, terms: hireTermsOf({ frozen, context }) };
  const units = pieceRows(unitsOfBooking(db, booking.id)).flatMap((rows) => unitPiece(rows, asked));
  const last =
    units
      .flatMap(({ window }) => (window === null ? [] : [window.ends_before]))
      .toSorted()
      .at(-1) ?? null;
  const items = itemsOfBooking(db, booking.id).flatMap((item) => itemPiece(item, { ...asked, last }));
  return {
    pieces: [...units, ...items],
    terms: frozen.house.pricing,
    waiver: frozen.choices?.waiver ?? 'taken',
    quoted_minor: frozen.price.net_minor,
    chargeEnds: asked.terms.chargeEnds,
  };
}

interface Frozen {
  readonly db: DbOrTx;
  readonly booking: BookingRow;
  readonly frozen: PapersInput;
  readonly found: number | undefined;
  readonly terms: HireTerms;
}

function hireTermsOf({ frozen, context }: { readonly frozen: PapersInput; readonly context: Context }): HireTerms {
  const { house, choices } = frozen;
  return {
    rule: house.charging,
    daysPerWeek: house.pricing.daysPerWeek,
    chargeEnds: house.terms.chargeEnds,
    currency: house.pricing.currency,
    discounts: choices?.discounts ?? NO_DISCOUNTS,
    today: today(context),
  };
}

/** Each piece with the rows that took one another's place. */
function pieceRows(rows: readonly BookingUnitRow[]): readonly (readonly [BookingUnitRow, ...BookingUnitRow[]])[] {
  const next = new Map(rows.flatMap((row) => (row.replaces_id === null ? [] : [[row.replaces_id, row] as const])));
  return rows
    .filter(({ replaces_id }) => replaces_id === null)
    .map((first) => {
      const chain: [BookingUnitRow, ...BookingUnitRow[]] = [first];
      for (let row = next.get(first.id); row !== undefined; row = next.get(row.id)) chain.push(row);
      return chain;
    });
}

function unitPiece(rows: readonly [BookingUnitRow, ...BookingUnitRow[]], asked: Frozen): readonly PieceHire[] {
  const [first] = rows;
  const last = rows.at(-1) ?? first;
  const number =
    first.quoted_model === '' ? (findUnit(asked.db, first.unit_serial)?.model_number ?? '') : first.quoted_model;
  const model = asked.frozen.models.find((one) => one.number === number);
  if (model === undefined) return [];
  const noticed = noticedUnits(asked.db, asked.booking.id);
  const notice = rows.map(({ id }) => noticed.get(id)).find((one) => one !== undefined);
  const outOn = rows.map(({ out_on }) => out_on).find((day) => day !== null) ?? null;
  const piece: HiredPiece = {
    ...pricedAs({ about: `unit ${first.id}`, model, frozen: asked.frozen }),
    serials: rows.map(({ unit_serial }) => unit_serial),
    count: 1,
    window: { starts_on: first.starts_on, ends_before: last.ends_before },
    outOn,
    backOn:
      last.state === 'released'
        ? rows
            .map(({ back_on }) => back_on ?? '')
            .toSorted()
            .at(-1) || null
        : last.back_on,
    lostOn: last.state === 'lost' && last.id !== asked.found ? lostOn({ asked, serial: last.unit_serial }) : null,
    notice: notice === undefined ? null : noticeOf(notice),
    isReleased: last.state === 'released' && outOn === null,
  };
  return [{ ...hireCharge({ piece, terms: asked.terms }), rows: rows.map(({ id }) => id), count: 1 }];
}

function lostOn({ asked, serial }: { readonly asked: Frozen; readonly serial: string }): string | null {
  const move = movesOfBooking(asked.db, asked.booking.id).findLast(
    (one) => one.unit_serial === serial && one.to_state === 'lost' && one.from_state !== 'lost',
  );
  return move?.at.slice(0, 10) ?? null;
}

function noticeOf({ number, noticed_at }: OffHireNoticeRow): NonNullable<HiredPiece['notice']> {
  return { number, on: noticed_at.slice(0, 10) };
}

/** Counted pieces are on hire as long as the last unit they went with. */
function itemPiece(item: BookingItemRow, asked: Frozen & { readonly last: string | null }): readonly PieceHire[] {
  const model = asked.frozen.models.find((one) => one.number === item.model_number);
  if (model === undefined || (model.role === 'accessory' && model.facts.saleItem)) return [];
  const ends = asked.last === null || asked.last <= item.starts_on ? item.ends_before : asked.last;
  const piece: HiredPiece = {
    ...pricedAs({ about: `pieces ${item.id}`, model, frozen: asked.frozen }),
    serials: [],
    count: item.count,
    window: { starts_on: item.starts_on, ends_before: ends },
    outOn: null,
    backOn: null,
    lostOn: null,
    notice: null,
    isReleased: item.state === 'released',
    goesWithUnits: true,
  };
  return [{ ...hireCharge({ piece, terms: asked.terms }), rows: [], count: item.count }];
}

interface PricedAs {
  readonly about: string;
  readonly model: Model;
  readonly frozen: PapersInput;
}

function pricedAs({
  about,
  model,
  frozen,
}: PricedAs): Pick<HiredPiece, 'about' | 'number' | 'name' | 'rates' | 'quotedEach_minor'> {
  const line = frozen.price.lines.find(({ number, kind }) => number === model.number && kind !== 'sale');
  return {
    about,
    number: model.number,
    name: model.name,
    rates: model.rates,
    quotedEach_minor: line?.unit_minor ?? toMinor(0),
  };
}
