/*
 * Has an order worked out: starts the plan of its enquiry and waits a moment for it.
 * Invariant: counted by link and bounded in all, so that strangers never take the machine from the house.
 * Not here: what comes of it (order-answer.ts).
 * Read next: ../plans/plan-enquiry.ts.
 */
import { countLines } from '#db/queries/schedule.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { awaitPlan, type PlanState, planState, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import type { OpenOrder } from './open-link.ts';
import { takeTurn } from './self-throttle.ts';

/** Plans for strangers at once; the house's own are not counted. House practice for two cores, no source. */
const MOST_AT_ONCE = 2;
/** How long a page waits before it says that it is still being worked out. */
const WAIT_MS = 8_000;

declare global {
  var kitwrightStrangersPlans: Set<number> | undefined;
}

export async function workOrder(context: Context, { order, link, desk }: OpenOrder): Promise<Result<PlanState>> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const enquiryId = order.enquiry_id;
  if (countLines(context.database.db, enquiryId) === 0)
    return failed({ code: 'no-lines', sentence: 'There is no valve in this order yet: add one first.' });
  const before = planState(desk, enquiryId);
  if (!before.ok) return before;
  if (before.value.kind === 'failed' || (before.value.kind === 'ready' && before.value.current)) return before;
  if (before.value.kind !== 'running') {
    const started = start(context, { enquiryId, linkId: link.id, desk });
    if (!started.ok) return started;
  }
  await Promise.race([awaitPlan(desk, enquiryId), pause(WAIT_MS)]);
  return planState(desk, enquiryId);
}

interface Starting {
  readonly enquiryId: number;
  readonly linkId: number;
  readonly desk: Context;
}

function start(context: Context, { enquiryId, linkId, desk }: Starting): Result<true> {
  globalThis.kitwrightStrangersPlans ??= new Set();
  const running = globalThis.kitwrightStrangersPlans;
  if (running.size >= MOST_AT_ONCE && !running.has(enquiryId))
    return failed({ code: 'busy', sentence: 'Many people ask at this moment. Wait a minute and load the page again.' });
  const turn = takeTurn(context, { turn: 'work an order out', who: `link ${linkId}` });
  if (!turn.ok) return turn;
  const started = startPlan(desk, enquiryId);
  if (!started.ok) return started;
  running.add(enquiryId);
  void awaitPlan(desk, enquiryId).finally(() => running.delete(enquiryId));
  return ok(true);
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, milliseconds).unref();
  });
}
