/*
 * How far an order made without the Desk has come, and what its owner may still do.
 * Invariant: a stage that the Desk has taken over is changed by the Desk only; a quote is accepted only as it was issued.
 * Not here: the states of the enquiry (lib/enquiry), which the Desk works with.
 * Read next: open-link.ts.
 */
import type { SelfOrderRow } from '#db/queries/self-orders.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';

export const ORDER_STAGES = ['draft', 'handed over', 'quoted', 'accepted', 'cancelled'] as const;
export type OrderStage = (typeof ORDER_STAGES)[number];

export function stageOf({ stage }: Pick<SelfOrderRow, 'stage'>): OrderStage {
  return ORDER_STAGES.find((name) => name === stage) ?? 'draft';
}

/** Valves, dates and place may be changed until the Desk has it or it was ordered; a quote that was issued then needs a new one. */
export function mayChange(order: Pick<SelfOrderRow, 'stage' | 'taken_by'>): Result<true> {
  if (order.taken_by !== '')
    return failed({
      code: 'order-with-desk',
      sentence: 'The house is working on this order; ask there for a change.',
    });
  const stage = stageOf(order);
  if (stage === 'handed over')
    return failed({
      code: 'order-with-desk',
      sentence: 'This order was handed over to the house; ask there for a change.',
    });
  if (stage === 'accepted')
    return failed({
      code: 'order-accepted',
      sentence: 'This order was accepted. Cancel it first while that is possible, or ask the house for a change.',
    });
  return ok(true);
}
