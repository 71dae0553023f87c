/*
 * What the hire of one booked piece comes to by the days it was really on hire, beside what the quote charged for it.
 * Invariant: rates and terms are the quote's own; the charge ends at the off-hire notice or at collection, by the terms; the sentence says which days, and why they end there.
 * Not here: cleaning, repair and loss (return-charges.ts), and which units are on hire (services).
 * Read next: chargeable-days.ts, best-rate.ts, return-charges.ts.
 */
import type { RateCard } from '#lib/equipment/model.ts';
import { addDays, type DateRange, type IsoDate } from '#lib/kernel/date-range.ts';
import { type Minor, roundMinor, toMinor } from '#lib/money/money.ts';
import { bestRate } from './best-rate.ts';
import { type ChargingRule, chargeableDays } from './chargeable-days.ts';
import type { DiscountChoices } from './discounts.ts';
import type { HireChange } from './return-facts.ts';
import { tellAmount } from './tell.ts';

export interface HiredPiece extends Pick<HireChange, 'about' | 'number' | 'name' | 'serials'> {
  readonly count: number;
  readonly rates: RateCard;
  /** What the quote charges for one of it, before discounts; nought where it does not stand there. */
  readonly quotedEach_minor: Minor;
  /** As agreed, extensions included. */
  readonly window: DateRange;
  /** Went out later than agreed where it is after the first day; null while it has not left. */
  readonly outOn: IsoDate | null;
  readonly backOn: IsoDate | null;
  readonly lostOn: IsoDate | null;
  readonly notice: { readonly number: string; readonly on: IsoDate } | null;
  /** Given up before it left the house: never on hire. */
  readonly isReleased: boolean;
  /** Counted pieces: on hire to the end of the window, which is that of the last unit they went with. */
  readonly goesWithUnits?: true;
}

export interface HireTerms {
  readonly rule: ChargingRule;
  readonly daysPerWeek: 5 | 7;
  readonly chargeEnds: 'off-hire notice' | 'collection';
  readonly currency: string;
  readonly discounts: DiscountChoices;
  readonly today: IsoDate;
}

/** `agreed` and `running` may still change; the others stand. */
export type HireEnd = 'notice' | 'collection' | 'loss' | 'agreed' | 'running' | 'with its units' | 'never left';

export interface HireCharge {
  readonly change: HireChange;
  /** Charged from and to; null where it was never on hire. */
  readonly window: DateRange | null;
  readonly days: number;
  readonly end: HireEnd;
}

interface HireQuestion {
  readonly piece: HiredPiece;
  readonly terms: HireTerms;
}

export function hireCharge(question: HireQuestion): HireCharge {
  const { piece, terms } = question;
  const { about, number, name, serials, count } = piece;
  const discount = discountOf(terms.discounts);
  const quoted_minor = toMinor(discount.left(piece.quotedEach_minor) * count);
  const change = { kind: 'hire', about, number, name, serials, quoted_minor } as const;
  if (piece.isReleased) {
    const sentence = 'It was given up before it left the house, so no hire is charged.';
    return { change: { ...change, charged_minor: toMinor(0), sentence }, window: null, days: 0, end: 'never left' };
  }
  const { end, lastDay } = lastDayOf(question);
  const starts_on = laterOf(piece.window.starts_on, piece.outOn ?? '');
  const window = { starts_on, ends_before: addDays(laterOf(lastDay, starts_on), 1) };
  const charged = chargeableDays({ window, rule: terms.rule, transitDays: 0 });
  const best = bestRate({ rates: piece.rates, days: charged.days, daysPerWeek: terms.daysPerWeek });
  const each = tellAmount({ minor: best.total_minor, currency: terms.currency });
  const told = [
    `On hire from ${window.starts_on} to ${addDays(window.ends_before, -1)}, ${endWords(end, piece)}.`,
    charged.sentence,
    `At the cheapest mix of the quote's rates, ${best.mix}: ${each}${count === 1 ? '' : ` each, times ${count}`}${discount.words}.`,
  ];
  const charged_minor = toMinor(discount.left(best.total_minor) * count);
  return { change: { ...change, charged_minor, sentence: told.join(' ') }, window, days: charged.days, end };
}

interface LastDay {
  readonly end: HireEnd;
  readonly lastDay: IsoDate;
}

/** The day of the notice, of the collection and of the loss still belong to the hire. */
function lastDayOf({ piece, terms }: HireQuestion): LastDay {
  const { backOn, lostOn, notice } = piece;
  const noticed = terms.chargeEnds === 'off-hire notice' ? notice : null;
  const ends: readonly LastDay[] = [
    ...(noticed === null ? [] : [{ end: 'notice', lastDay: noticed.on } as const]),
    ...(backOn === null ? [] : [{ end: 'collection', lastDay: backOn } as const]),
    ...(lostOn === null ? [] : [{ end: 'loss', lastDay: lostOn } as const]),
  ];
  const [first] = ends.toSorted((a, b) => (a.lastDay < b.lastDay ? -1 : a.lastDay > b.lastDay ? 1 : 0));
  if (first !== undefined) return first;
  const agreed = addDays(piece.window.ends_before, -1);
  if (piece.goesWithUnits) return { end: 'with its units', lastDay: agreed };
  if (piece.outOn === null || terms.today <= agreed) return { end: 'agreed', lastDay: agreed };
  return { end: 'running', lastDay: terms.today };
}

function endWords(end: HireEnd, { notice }: HiredPiece): string {
  switch (end) {
    case 'notice':
      return `when off-hire notice ${notice?.number ?? ''} was given`;
    case 'collection':
      return 'when it came back';
    case 'loss':
      return 'when it was reported lost';
    case 'agreed':
      return 'as agreed';
    case 'running':
      return 'and still running: no notice was given and it is not back';
    case 'with its units':
      return 'as long as the last unit it went with';
    case 'never left':
      return 'never on hire';
  }
}

/** What the quote gives away of hire: the group's share first, then that of the whole quote on what is left. */
function discountOf({ groups, whole }: DiscountChoices) {
  const shares = [groups.find(({ group }) => group === 'hire'), whole].flatMap((one) =>
    one === undefined || one === null || one.percent === 0 ? [] : [one.percent],
  );
  return {
    left: (minor: number): number =>
      shares.reduce((left, percent) => left - roundMinor((left * Math.round(percent * 100)) / 10_000), minor),
    words: shares.map((percent) => `, less ${percent} % as quoted`).join(''),
  };
}

function laterOf(a: IsoDate, b: IsoDate): IsoDate {
  return a < b ? b : a;
}
