/*
 * Asks for, approves, refuses and withdraws a discount above the house's limit.
 * Invariant: who asked never approves; the request keeps exactly what was priced; a decision is made once, with its reason.
 * Not here: whether an approval still holds (../../pricing/discount-approval.ts).
 * Read next: discount-of.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { addAuditEntry } from '#db/queries/audit.ts';
import { decideApproval, findApproval, insertApproval, type OptionKey } from '#db/queries/quote-options.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { APPROVAL_STATES, type DiscountAsk, mayDecide } from '#lib/pricing/discount-approval.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { discountOf, tellAsk } from './discount-of.ts';
import { optionPrice } from './option-price.ts';

export function askForDiscount(
  context: Context,
  asked: OptionKey & { readonly reason: string },
): Result<{ readonly id: number }> {
  const allowed = authorise(context, 'issue quotes');
  if (!allowed.ok) return allowed;
  if (asked.reason.trim() === '') return REASON_MISSING;
  const option = optionPrice(context, asked);
  if (!option.ok) return option;
  const price = option.value.planned?.price;
  const standing = price === undefined ? null : discountOf(context, { ...asked, price }).standing;
  if (standing === null || standing.kind === 'within' || standing.kind === 'approved' || standing.kind === 'asked') {
    return failed({
      code: 'approval-not-needed',
      sentence: 'There is nothing to approve: the discount is within the limit, or was asked for already.',
    });
  }
  const { ask } = standing;
  return context.database.db.transaction((tx) => ok({ id: write(tx, { context, asked, ask }) }), {
    behavior: 'immediate',
  });
}

interface Writing {
  readonly context: Context;
  readonly asked: OptionKey & { readonly reason: string };
  readonly ask: DiscountAsk;
}

function write(tx: DbOrTx, { context, asked, ask }: Writing): number {
  const at = timestamp(context);
  const who = actingPerson(context);
  const id = insertApproval(tx, {
    enquiry_id: asked.enquiryId,
    option_slot: asked.slot,
    asked_json: JSON.stringify(ask),
    state: 'asked',
    reason: asked.reason.trim(),
    asked_by: who.id,
    asked_by_name: who.name,
    asked_at: at,
  });
  addAuditEntry(tx, {
    at,
    who,
    action: 'discount asked for',
    subject: `enquiry ${asked.enquiryId}`,
    detail_json: JSON.stringify({ approval: id, about: tellAsk(ask), reason: asked.reason.trim() }),
  });
  return id;
}

export interface DiscountDecision {
  readonly approvalId: number;
  readonly decision: 'approved' | 'refused' | 'withdrawn';
  readonly reason: string;
}

export function decideDiscount(context: Context, decision: DiscountDecision): Result<true> {
  const allowed = authorise(context, 'approve discounts');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => decide(tx, { context, decision }), { behavior: 'immediate' });
}

interface Deciding {
  readonly context: Context;
  readonly decision: DiscountDecision;
}

function decide(tx: DbOrTx, { context, decision }: Deciding): Result<true> {
  const row = findApproval(tx, decision.approvalId);
  if (!row) return failed({ code: 'no-such-approval', sentence: 'That request is not there; load the page again.' });
  const who = actingPerson(context);
  const state = APPROVAL_STATES.find((name) => name === row.state) ?? 'withdrawn';
  const may =
    decision.decision === 'withdrawn'
      ? mayWithdraw(state)
      : mayDecide({ state, askedBy: row.asked_by, decider: who.id });
  if (!may.ok) return may;
  if (decision.decision === 'refused' && decision.reason.trim() === '') return REASON_MISSING;
  const at = timestamp(context);
  decideApproval(tx, {
    id: row.id,
    state: decision.decision,
    decided_by: who.id,
    decided_by_name: who.name,
    decided_at: at,
    decision_reason: decision.reason.trim(),
  });
  addAuditEntry(tx, {
    at,
    who,
    action: `discount ${decision.decision}`,
    subject: `enquiry ${row.enquiry_id}`,
    detail_json: JSON.stringify({ approval: row.id, reason: decision.reason.trim() }),
  });
  return ok(true);
}

/** Also an approval can be taken back; issued quotes stay as they are. */
function mayWithdraw(state: string): Result<true> {
  if (state === 'asked' || state === 'approved') return ok(true);
  return failed({
    code: 'approval-decided',
    sentence: `This request was ${state} already; load the page again to see how the price stands.`,
  });
}

const REASON_MISSING = failed({
  code: 'reason-missing',
  sentence: 'Say why: the reason is kept with the request.',
});
