/*
 * What is still worth asking about one valve of an order, and what it comes to as it stands.
 * Invariant: only the models and rates of the house go in, never what is in stock or what was paid for it.
 * Not here: taking the answer (order-lines.ts).
 * Read next: ../../questions/next-question.ts, ../../workers/ask.ts.
 */
import { findLine } from '#db/queries/schedule.ts';
import { lineAnswers } from '#db/queries/self-orders.ts';
import type { Cells } from '#lib/intake/columns.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { HandOver } from '#lib/questions/hand-over.ts';
import type { LineOutcome } from '#lib/questions/line-outcome.ts';
import type { Asking } from '#lib/questions/next-question.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts, houseModels } from '#lib/services/house/house-facts.ts';
import { sha256 } from '#lib/services/sha256.ts';
import { askInWorker } from '#lib/workers/ask.ts';
import type { AskJob } from '#lib/workers/ask-worker.ts';
import { type LinkAsked, openOrder } from './open-link.ts';
import { noSuchValve, unknownOf } from './order-lines.ts';
import { selfServiceFacts } from './self-facts.ts';
import { takeTurn } from './self-throttle.ts';
import { type ToldRange, torqueView } from './valve-answer.ts';

export interface ValveAsking {
  readonly lineId: number;
  readonly cells: Cells;
  readonly unknown: readonly string[];
  readonly hasPhoto: boolean;
  readonly questions: Asking['questions'];
  readonly findOut: Asking['findOut'];
  readonly outcome: ValveOutcome;
}

/** What the valve comes to as it stands, as its owner is told. */
export interface ValveOutcome {
  readonly starting_nm: ToldRange;
  readonly ceiling_nm: ToldRange;
  readonly turns: ToldRange;
  readonly handOver: readonly HandOver[];
  /** Hire of what fits at least cost; null while it has no price. */
  readonly hire: { readonly amount_minor: number; readonly currency: string; readonly days: number } | null;
}

export async function askValve(
  context: Context,
  input: LinkAsked & { readonly lineId: number },
): Promise<Result<ValveAsking>> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openOrder(context, input);
  if (!opened.ok) return opened;
  const { enquiry, desk, order, link } = opened.value;
  const row = findLine(context.database.db, { enquiryId: order.enquiry_id, lineId: input.lineId });
  if (row === undefined) return noSuchValve();
  const cells = JSON.parse(row.cells_json) as Cells;
  const unknown = unknownOf(context, { enquiryId: order.enquiry_id, lineId: input.lineId });
  const job: AskJob = {
    told: { cells, unknown },
    site: enquiry.site,
    models: houseModels(desk, enquiry.site.startsOn),
    bounds: selfServiceFacts(desk),
  };
  const kept = keptAsking(job);
  const hasPhoto = lineAnswers(context.database.db, order.enquiry_id).get(input.lineId)?.photo_id != null;
  const shown = async (asking: Promise<Asking>): Promise<Result<ValveAsking>> => {
    const { questions, findOut, outcome } = await asking;
    const price = { currency: houseFacts(desk).pricing.currency, days: enquiry.site.days };
    return ok({
      lineId: input.lineId,
      cells,
      unknown,
      hasPhoto,
      questions,
      findOut,
      outcome: outcomeView(outcome, price),
    });
  };
  if (kept !== undefined) return shown(kept);
  const turn = takeTurn(context, { turn: 'work on an order', who: `questions ${link.id}` });
  if (!turn.ok) return turn;
  const asking = askInWorker(job);
  if (asking === null)
    return failed({ code: 'busy', sentence: 'Many people ask at this moment. Wait a minute and load the page again.' });
  keepAsking(job, asking);
  return shown(asking);
}

function outcomeView(
  { duty, handOver, hire_minor, kit }: LineOutcome,
  price: { readonly currency: string; readonly days: number },
): ValveOutcome {
  return {
    ...torqueView(duty),
    handOver,
    hire: handOver.length > 0 || kit.length === 0 ? null : { amount_minor: hire_minor, ...price },
  };
}

/** The same valve is asked about at every look at its page. */
const MOST_KEPT = 300;
const kept = new Map<string, Promise<Asking>>();

function keyOf({ told, site, models, bounds }: AskJob): string {
  return sha256(JSON.stringify([told, site, bounds, models.map(({ number, rates }) => [number, rates])]));
}

function keptAsking(job: AskJob): Promise<Asking> | undefined {
  return kept.get(keyOf(job));
}

function keepAsking(job: AskJob, asking: Promise<Asking>): void {
  const key = keyOf(job);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(key, asking);
  asking.catch(() => kept.delete(key));
}
