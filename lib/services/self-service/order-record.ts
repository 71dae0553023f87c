/*
 * Small changes of an order's own record: its stage, its contact, and that it was touched.
 * Invariant: a change of valves, dates or place makes a quoted order a draft again, so that no old quote is accepted for it.
 * Not here: the enquiry's lines (order-lines.ts).
 * Read next: order-stage.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { changeSelfOrder } from '#db/queries/self-orders.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import type { OpenOrder } from './open-link.ts';
import { type OrderStage, stageOf } from './order-stage.ts';

export function changedDraft(context: Context, { order }: OpenOrder): void {
  if (stageOf(order) !== 'quoted' && stageOf(order) !== 'cancelled') return;
  changeSelfOrder(context.database.db, {
    enquiryId: order.enquiry_id,
    set: { stage: 'draft', stage_at: timestamp(context) },
  });
}

interface StageStep {
  readonly context: Context;
  readonly enquiryId: number;
  readonly stage: OrderStage;
  readonly set?: { readonly contact_json?: string; readonly reasons_json?: string };
}

export function writeStage(tx: DbOrTx, { context, enquiryId, stage, set = {} }: StageStep): void {
  changeSelfOrder(tx, { enquiryId, set: { ...set, stage, stage_at: timestamp(context) } });
  logChange(tx, {
    context,
    deed: { action: `self-service: ${stage}`, subject: `enquiry ${enquiryId}`, detail: {} },
  });
}
