/*
 * An order as its owner sees it: place, valves, answer, quote and booking, and what may be done with it now.
 * Invariant: worked out only while it may still change; what was quoted is shown as it was issued.
 * Not here: one valve's questions (ask-valve.ts).
 * Read next: order-answer.ts.
 */
import { bookingOfQuote } from '#db/queries/bookings.ts';
import { listQuotes } from '#db/queries/quotes.ts';
import { listLines, listListFiles } from '#db/queries/schedule.ts';
import { lineAnswers } from '#db/queries/self-orders.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Cells } from '#lib/intake/columns.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { cancelUntil } from './cancel-until.ts';
import { type LinkAsked, type OpenOrder, openOrder } from './open-link.ts';
import { type OrderAnswer, orderAnswer } from './order-answer.ts';
import { mayChange, type OrderStage, stageOf } from './order-stage.ts';
import { workOrder } from './work-order.ts';

export interface OrderQuote {
  readonly id: number;
  /** Number and revision. */
  readonly name: string;
  readonly validUntil: IsoDate;
  readonly total_minor: number;
  readonly currency: string;
}

export interface OrderBooking {
  readonly number: string;
  readonly state: string;
  readonly heldUntil: string | null;
  readonly cancelUntil: string;
  readonly mayCancel: boolean;
}

export interface OrderView {
  readonly number: string;
  readonly stage: OrderStage;
  readonly withDesk: boolean;
  readonly mayChange: boolean;
  readonly mayAct: boolean;
  readonly expiresAt: string;
  readonly site: Pick<Site, 'name' | 'startsOn' | 'days' | 'zone' | 'vehicleAccess' | 'enclosed'>;
  readonly contact: Readonly<Record<string, string>>;
  readonly valves: readonly {
    readonly lineId: number;
    readonly tag: string;
    readonly cells: Cells;
    readonly hasPhoto: boolean;
  }[];
  /** Rows of the newest list that were not taken. */
  readonly notTaken: readonly { readonly row: number; readonly reason: string }[];
  readonly work: 'none' | 'running' | 'failed' | 'ready' | 'busy';
  readonly answer: OrderAnswer | null;
  readonly quote: OrderQuote | null;
  readonly booking: OrderBooking | null;
}

const NOT_TAKEN_SHOWN = 30;

export async function openOrderView(context: Context, asked: LinkAsked): Promise<Result<OrderView>> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openOrder(context, asked);
  if (!opened.ok) return opened;
  const { order, enquiry, link } = opened.value;
  const { db } = context.database;
  const lines = listLines(db, order.enquiry_id);
  const work = lines.length === 0 ? 'none' : await workedOut(context, opened.value);
  const answer = work === 'ready' ? orderAnswer(context, opened.value) : ok(null);
  if (!answer.ok) return answer;
  const answers = lineAnswers(db, order.enquiry_id);
  const { name, startsOn, days, zone, vehicleAccess, enclosed } = enquiry.site;
  return ok({
    number: enquiry.row.number,
    stage: stageOf(order),
    withDesk: order.taken_by !== '' || stageOf(order) === 'handed over',
    mayChange: link.scope === 'order' && mayChange(order).ok,
    mayAct: link.scope === 'order',
    expiresAt: link.expires_at,
    site: { startsOn, days, ...given({ name, zone, vehicleAccess, enclosed }) },
    contact: JSON.parse(order.contact_json) as Readonly<Record<string, string>>,
    valves: lines.map((row) => {
      const cells = JSON.parse(row.cells_json) as Cells;
      return {
        lineId: row.id,
        tag: cells.tag ?? `row ${row.row}`,
        cells,
        hasPhoto: answers.get(row.id)?.photo_id != null,
      };
    }),
    notTaken: notTakenRows(context, order.enquiry_id),
    work,
    answer: answer.value,
    ...quoteAndBooking(context, opened.value),
  });
}

function given<Facts extends object>(facts: Facts): Partial<Facts> {
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined)) as Partial<Facts>;
}

async function workedOut(context: Context, opened: OpenOrder): Promise<OrderView['work']> {
  const state = await workOrder(context, opened);
  if (!state.ok) return 'busy';
  if (state.value.kind === 'ready') return state.value.current ? 'ready' : 'running';
  return state.value.kind;
}

/** As the newest list was settled; what is written of it in the log of the list. */
function notTakenRows(context: Context, enquiryId: number): OrderView['notTaken'] {
  const [newest] = listListFiles(context.database.db, enquiryId);
  if (newest === undefined || newest.outcome_json === null) return [];
  const outcome = JSON.parse(newest.outcome_json) as ListOutcome;
  return [
    ...outcome.setAside.map(({ row, reason }) => ({ row, reason })),
    ...outcome.problems
      .filter(({ severity }) => severity === 'refused')
      .map(({ row, sentence, remedy }) => ({ row, reason: `${sentence} ${remedy}` })),
  ].slice(0, NOT_TAKEN_SHOWN);
}

interface ListOutcome {
  readonly setAside: readonly { readonly row: number; readonly reason: string }[];
  readonly problems: readonly {
    readonly row: number;
    readonly severity: string;
    readonly sentence: string;
    readonly remedy: string;
  }[];
}

function quoteAndBooking(context: Context, { order, enquiry }: OpenOrder): Pick<OrderView, 'quote' | 'booking'> {
  const { db } = context.database;
  const stage = stageOf(order);
  const quotes = listQuotes(db, order.enquiry_id);
  const booked = quotes.flatMap((one) => {
    const booking = bookingOfQuote(db, one.id);
    return booking === undefined ? [] : [{ quote: one, booking }];
  })[0];
  const [newest] = quotes;
  const shown = booked?.quote ?? (stage === 'quoted' || stage === 'accepted' ? newest : undefined);
  const until = cancelUntil(enquiry.site.startsOn);
  return {
    quote:
      shown === undefined
        ? null
        : {
            id: shown.id,
            name: `${shown.number} ${shown.revision}`,
            validUntil: shown.valid_until,
            total_minor: shown.total_minor,
            currency: shown.currency,
          },
    booking:
      booked === undefined
        ? null
        : {
            number: booked.booking.number,
            state: booked.booking.state,
            heldUntil: booked.booking.held_until,
            cancelUntil: until,
            mayCancel:
              timestamp(context) < until && (booked.booking.state === 'held' || booked.booking.state === 'confirmed'),
          },
  };
}
