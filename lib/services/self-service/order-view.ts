/*
 * An order as its owner sees it: place, valves, answer, quote and booking, and what may be done with it now.
 * Invariant: worked out only while it may still change; what was quoted is shown as it was issued.
 * Not here: one valve's questions (ask-valve.ts).
 * Read next: order-answer.ts.
 */
import { listLines, listListFiles } from '#db/queries/schedule.ts';
import { lineAnswers, partsOfOrder } from '#db/queries/self-orders.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Cells } from '#lib/intake/columns.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import type { Language } from '#lib/wording/language.ts';
import { type LinkAsked, type OpenOrder, openOrder } from './open-link.ts';
import { type OrderAnswer, orderAnswer } from './order-answer.ts';
import { type QuotesOfOrder, quotesOfOrder } from './order-quotes.ts';
import { mayChange, type OrderStage, stageOf } from './order-stage.ts';
import { workOrder } from './work-order.ts';

export interface OrderView extends QuotesOfOrder {
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
  /** What was handed over apart from it, each an order of its own. */
  readonly apart: readonly { readonly number: string; readonly stage: OrderStage }[];
}

const NOT_TAKEN_SHOWN = 30;

/** Drawings are lettered in the language that is asked for. */
export async function openOrderView(
  context: Context,
  asked: LinkAsked & { readonly language?: Language },
): Promise<Result<OrderView>> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openOrder(context, asked);
  if (!opened.ok) return opened;
  const { order, enquiry, link } = opened.value;
  const { db } = context.database;
  const lines = listLines(db, order.enquiry_id);
  const work = lines.length === 0 ? 'none' : await workedOut(context, opened.value);
  const answer = work === 'ready' ? orderAnswer(context, opened.value, asked.language) : ok(null);
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
    ...quotesOfOrder(context, opened.value),
    apart: partsOf(db, order.enquiry_id),
  });
}

function partsOf(db: Context['database']['db'], enquiryId: number): OrderView['apart'] {
  return partsOfOrder(db, enquiryId).map(({ number, order }) => ({ number, stage: stageOf(order) }));
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
