/*
 * How the discount of an option stands: within the limit, approved for this very price, asked for, or to be asked for.
 * Invariant: issuing and showing ask this same function.
 * Not here: asking and deciding (decide-discount.ts).
 * Read next: ../../pricing/discount-approval.ts.
 */
import { type ApprovalRow, listApprovals, type OptionKey } from '#db/queries/quote-options.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import {
  APPROVAL_STATES,
  type Approval,
  askAbove,
  type DiscountAsk,
  type DiscountStanding,
  discountStanding,
  percentGiven,
} from '#lib/pricing/discount-approval.ts';
import { GROUP_NAMES } from '#lib/pricing/line-groups.ts';
import type { PricedPlan } from '#lib/pricing/priced-plan.ts';
import { tellAmount, tellParts } from '#lib/pricing/tell.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';

export interface ApprovalView {
  readonly id: number;
  readonly state: Approval['state'];
  /** What it is about, in words. */
  readonly about: string;
  readonly reason: string;
  readonly askedBy: { readonly id: string; readonly name: string };
  readonly askedAt: string;
  readonly decidedBy: string;
  readonly decidedAt: string;
  readonly decision: string;
}

export interface DiscountOf {
  readonly standing: DiscountStanding;
  readonly limit: number;
  /** What is above the limit, in words; empty where nothing is. */
  readonly above: string;
  /** The newest first. */
  readonly approvals: readonly ApprovalView[];
}

export function discountOf(context: Context, at: OptionKey & { readonly price: PricedPlan }): DiscountOf {
  const limit = houseFacts(context).terms.discountLimitPercent;
  const rows = listApprovals(context.database.db, at);
  const standing = discountStanding({ ask: askAbove(at.price, limit), approvals: rows.map(approvalOf) });
  return {
    standing,
    limit,
    above: standing.kind === 'within' ? '' : tellAsk(standing.ask),
    approvals: rows.map(viewOf),
  };
}

/** Whether it may be issued as far as discounts go; the sentence says what is missing. */
export function mayQuote({ standing, limit, above, approvals }: DiscountOf): Result<true> {
  const code = 'discount-not-approved';
  switch (standing.kind) {
    case 'within':
    case 'approved':
      return ok(true);
    case 'asked': {
      const asked = approvals.find(({ id }) => id === standing.approvalId);
      return failed({
        code,
        sentence: `${asked?.askedBy.name ?? 'Somebody'} asked for approval of ${above}; somebody else of the Desk has to approve it before the quote can be issued.`,
      });
    }
    case 'to ask':
      return failed({
        code,
        sentence: `${above} is above the house's limit of ${limit} %. ${BECAUSE[standing.because]}`,
      });
  }
}

const BECAUSE = {
  'never asked': 'Ask for approval, or lower it.',
  'lower since': 'What was approved or asked for was another price: ask for approval of this one, or raise it again.',
  refused: 'Approval was refused: lower it, or ask again with another reason.',
  withdrawn: 'The approval was withdrawn: lower it, or ask again.',
} as const;

/** `8.8 % of hire (EUR 18.57 of EUR 211.00)` for each group. */
export function tellAsk({ currency, groups }: DiscountAsk): string {
  const tell = (minor: number) => tellAmount({ minor, currency });
  return tellParts(
    groups.map(
      (group) =>
        `${percentGiven(group)} % off ${GROUP_NAMES[group.group]} (${tell(group.given_minor)} of ${tell(group.listed_minor)})`,
    ),
  );
}

function approvalOf(row: ApprovalRow): Approval {
  return { id: row.id, state: stateOf(row), ask: askOf(row) };
}

function stateOf({ state }: ApprovalRow): Approval['state'] {
  return APPROVAL_STATES.find((name) => name === state) ?? 'withdrawn';
}

function askOf({ asked_json }: ApprovalRow): DiscountAsk {
  return JSON.parse(asked_json) as DiscountAsk;
}

function viewOf(row: ApprovalRow): ApprovalView {
  return {
    id: row.id,
    state: stateOf(row),
    about: tellAsk(askOf(row)),
    reason: row.reason,
    askedBy: { id: row.asked_by, name: row.asked_by_name },
    askedAt: row.asked_at,
    decidedBy: row.decided_by_name,
    decidedAt: row.decided_at,
    decision: row.decision_reason,
  };
}
