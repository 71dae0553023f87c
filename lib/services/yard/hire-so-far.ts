/*
 * The hire of a booking as people read it: like pieces together, each line with how it came about, and what differs from the quote with waiver and tax.
 * Invariant: the sums are those of the pieces; waiver and tax follow the terms of the quote, and a second reckoning finds the same.
 * Not here: what a return adds (the charges of a return).
 * Read next: hire-of-booking.ts, ../../pricing/return-charges.ts.
 */
import type { BookingRow } from '#db/queries/bookings.ts';
import { checkReturn } from '#lib/checking/check-return.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { HireEnd } from '#lib/pricing/hire-charge.ts';
import { returnCharges } from '#lib/pricing/return-charges.ts';
import { taxTotals } from '#lib/pricing/tax-totals.ts';
import type { Context } from '#lib/services/context.ts';
import { hireOfBooking, type PieceHire } from './hire-of-booking.ts';

export interface HireLine {
  readonly name: string;
  readonly model: string;
  readonly count: number;
  readonly serials: readonly string[];
  readonly days: number;
  readonly end: HireEnd;
  readonly quoted_minor: number;
  readonly charged_minor: number;
  readonly sentence: string;
}

export interface HireSoFar {
  readonly currency: string;
  readonly lines: readonly HireLine[];
  readonly quoted_minor: number;
  readonly charged_minor: number;
  /** What differs from the quote: net with waiver, tax and gross. */
  readonly waiver_minor: number;
  readonly more_net_minor: number;
  readonly more_gross_minor: number;
  readonly chargeEnds: 'off-hire notice' | 'collection';
}

const NO_RATES = { workshop_minor_per_hour: null, cleaning_minor: {} };

/** Null where the booking has no quote, so nothing is charged. */
export function hireSoFar(context: Context, booking: BookingRow): HireSoFar | null {
  const hire = hireOfBooking(context.database.db, { context, booking });
  if (hire === null) return null;
  const { terms, waiver, pieces } = hire;
  const question = { terms, rates: NO_RATES, waiver, facts: pieces.map(({ change }) => change) };
  const lines = returnCharges(question);
  const wrong = checkReturn(question, lines);
  invariant(wrong.length === 0, wrong.map(({ sentence }) => sentence).join(' '));
  const totals = taxTotals({ lines, categories: terms.taxCategories });
  const sum = (of: (piece: PieceHire) => number): number => pieces.reduce((total, piece) => total + of(piece), 0);
  return {
    currency: terms.currency,
    lines: together(pieces),
    quoted_minor: sum(({ change }) => change.quoted_minor),
    charged_minor: sum(({ change }) => change.charged_minor),
    waiver_minor: lines.reduce((total, line) => total + (line.kind === 'waiver' ? line.net_minor : 0), 0),
    more_net_minor: totals.net_minor,
    more_gross_minor: totals.gross_minor,
    chargeEnds: hire.chargeEnds,
  };
}

/** Pieces of one model that were hired alike stand on one line. */
function together(pieces: readonly PieceHire[]): readonly HireLine[] {
  const lines = new Map<string, HireLine>();
  for (const { change, days, end, count } of pieces) {
    const key = `${change.number} ${change.sentence}`;
    const line = lines.get(key);
    lines.set(key, {
      name: change.name,
      model: change.number,
      count: (line?.count ?? 0) + count,
      serials: [...(line?.serials ?? []), ...change.serials],
      days,
      end,
      quoted_minor: (line?.quoted_minor ?? 0) + change.quoted_minor,
      charged_minor: (line?.charged_minor ?? 0) + change.charged_minor,
      sentence: change.sentence,
    });
  }
  return [...lines.values()];
}
