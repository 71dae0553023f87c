/*
 * What needs somebody today: enquiries due, quotes about to lapse, discounts to decide, equipment that is short or not back.
 * Invariant: reads only; every list says how many there are even where it shows fewer.
 * Not here: the charts (open-house-figures.ts).
 * Read next: home-shortages.ts, ../../../db/queries/home.ts.
 */
import { type EnquiryListRow, listEnquiries } from '#db/queries/enquiries.ts';
import { approvalsWaiting, bookingsPast, enquiriesDue, quotesValidUntil } from '#db/queries/home.ts';
import { waitingOrders } from '#db/queries/self-orders.ts';
import { addDays, daysBetween, type IsoDate } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { type LinkAsk, listAskedByLink } from '#lib/services/self-service/answer-wish.ts';
import { waitingSince } from '#lib/services/self-service/take-over.ts';
import { type Short, shortAhead } from './home-shortages.ts';

export interface HomeEntry {
  readonly enquiryId: number;
  readonly number: string;
  readonly title: string;
  readonly customer: string;
}

export interface DueEnquiry extends HomeEntry {
  readonly state: string;
  readonly dueOn: IsoDate;
  /** Days from today; below zero it is overdue. */
  readonly inDays: number;
  readonly assignedName: string;
  readonly mine: boolean;
}

export interface HomeView {
  readonly today: IsoDate;
  readonly enquiries: number;
  readonly due: readonly DueEnquiry[];
  readonly lapsing: readonly (HomeEntry & {
    readonly quote: string;
    readonly validUntil: IsoDate;
    readonly inDays: number;
    readonly total_minor: number;
    readonly currency: string;
  })[];
  readonly approvals: readonly (HomeEntry & {
    readonly approvalId: number;
    readonly slot: number;
    readonly reason: string;
    readonly askedByName: string;
    /** Nobody approves what they asked for. */
    readonly own: boolean;
  })[];
  readonly short: readonly Short[];
  readonly late: readonly (HomeEntry & {
    readonly booking: string;
    readonly endedBefore: IsoDate;
    readonly units: number;
  })[];
  /** What came by self-service and nobody has taken over yet. */
  readonly selfServed: readonly (HomeEntry & { readonly stage: string; readonly stageAt: string })[];
  /** Off-hire notices and extensions that came by link. */
  readonly askedByLink: readonly (HomeEntry & LinkAsk)[];
  readonly changed: readonly EnquiryListRow[];
}

/** What falls due or lapses within a week is looked at today. House practice, no source. */
const DAYS_AHEAD = 7;
/** A quote that lapsed is asked about for a month. House practice, no source. */
const DAYS_SINCE_LAPSED = 30;
const CHANGED_SHOWN = 5;
const SELF_SHOWN = 50;

export function openHome(context: Context): Result<HomeView> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const asked = listAskedByLink(context);
  if (!asked.ok) return asked;
  const db = context.database.db;
  const day = today(context);
  const until = addDays(day, DAYS_AHEAD);
  const all = listEnquiries(db);
  return ok({
    today: day,
    enquiries: all.length,
    due: dueFirst(
      enquiriesDue(db, until).map(({ assignedTo, ...row }) => ({
        ...row,
        inDays: daysFrom({ day, to: row.dueOn }),
        mine: assignedTo === context.actor.id,
      })),
    ),
    lapsing: quotesValidUntil(db, { from: addDays(day, -DAYS_SINCE_LAPSED), until }).map((row) => ({
      ...row,
      inDays: daysFrom({ day, to: row.validUntil }),
    })),
    approvals: approvalsWaiting(db).map(({ askedBy, askedAt: _askedAt, ...row }) => ({
      ...row,
      own: askedBy === context.actor.id,
    })),
    short: shortAhead(context),
    late: bookingsPast(db, day),
    askedByLink: asked.value,
    selfServed: waitingOrders(db, { most: SELF_SHOWN, since: waitingSince(context) }),
    changed: all.slice(0, CHANGED_SHOWN),
  });
}

/** Overdue before due, one's own before others' on the same day. */
export function dueFirst(rows: readonly DueEnquiry[]): readonly DueEnquiry[] {
  return rows.toSorted(
    (a, b) => a.inDays - b.inDays || Number(b.mine) - Number(a.mine) || (a.number < b.number ? -1 : 1),
  );
}

function daysFrom({ day, to }: { readonly day: IsoDate; readonly to: IsoDate }): number {
  if (to === day) return 0;
  return to > day
    ? daysBetween({ starts_on: day, ends_before: to })
    : -daysBetween({ starts_on: to, ends_before: day });
}
