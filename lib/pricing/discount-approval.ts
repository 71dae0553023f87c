/*
 * Whether a discount may be quoted: within the house's limit, or approved by another person for exactly what was priced.
 * Invariant: an approval never covers a price that gives more, in percent or in money, or that comes to less in all than the one it was given for.
 * Not here: who is asked and how it is kept (lib/services/quotes/decide-discount.ts).
 * Read next: discounts.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { LineGroup } from './line-groups.ts';
import type { PricedPlan } from './priced-plan.ts';

/** One group whose discount is above the limit: its value at the house's prices, and what is given of it. */
export interface GroupAsk {
  readonly group: LineGroup;
  readonly listed_minor: number;
  readonly given_minor: number;
}

export interface DiscountAsk {
  readonly currency: string;
  readonly net_minor: number;
  readonly groups: readonly GroupAsk[];
}

export const APPROVAL_STATES = ['asked', 'approved', 'refused', 'withdrawn'] as const;
export type ApprovalState = (typeof APPROVAL_STATES)[number];

export interface Approval {
  readonly id: number;
  readonly state: ApprovalState;
  readonly ask: DiscountAsk;
}

export type DiscountStanding =
  | { readonly kind: 'within' }
  | { readonly kind: 'approved'; readonly ask: DiscountAsk; readonly approvalId: number }
  | { readonly kind: 'asked'; readonly ask: DiscountAsk; readonly approvalId: number }
  | {
      readonly kind: 'to ask';
      readonly ask: DiscountAsk;
      /** Why what was asked before does not do: nothing was, the price is lower now, or it was not granted. */
      readonly because: 'never asked' | 'lower since' | 'refused' | 'withdrawn';
    };

/** Null where every group stays within the limit. Amounts are rounded a line, so that a minor unit a line is no excess. */
export function askAbove(price: PricedPlan, limitPercent: number): DiscountAsk | null {
  const lines = price.lines.filter(({ kind }) => kind === 'discount').length;
  const groups = price.groups
    .filter(({ listed_minor, given_minor }) => (given_minor - lines) * 100 > listed_minor * limitPercent)
    .map(({ group, listed_minor, given_minor }) => ({ group, listed_minor, given_minor }));
  return groups.length === 0 ? null : { currency: price.currency, net_minor: price.net_minor, groups };
}

export function percentGiven({ listed_minor, given_minor }: GroupAsk): number {
  return listed_minor === 0 ? 0 : Math.round((given_minor * 10_000) / listed_minor) / 100;
}

/** Approvals come the newest first. */
export function discountStanding({
  ask,
  approvals,
}: {
  readonly ask: DiscountAsk | null;
  readonly approvals: readonly Approval[];
}): DiscountStanding {
  if (ask === null) return { kind: 'within' };
  const covering = approvals.filter((approval) => covers(approval.ask, ask));
  const approved = covering.find(({ state }) => state === 'approved');
  if (approved) return { kind: 'approved', ask, approvalId: approved.id };
  const asked = covering.find(({ state }) => state === 'asked');
  if (asked) return { kind: 'asked', ask, approvalId: asked.id };
  return { kind: 'to ask', ask, because: whyAsk({ approvals, covering }) };
}

/** A refused or withdrawn request does not stop a second one; two persons decide each. */
export function mayDecide(at: {
  readonly state: ApprovalState;
  readonly askedBy: string;
  readonly decider: string;
}): Result<true> {
  if (at.state !== 'asked') {
    return failed({
      code: 'approval-decided',
      sentence: `This request was ${at.state} already; load the page again to see how the price stands.`,
    });
  }
  if (at.askedBy === at.decider) {
    return failed({
      code: 'approval-own',
      sentence: 'Who asks for a discount does not approve it: somebody else of the Desk has to decide.',
    });
  }
  return ok(true);
}

function covers(approved: DiscountAsk, now: DiscountAsk): boolean {
  if (approved.currency !== now.currency || now.net_minor < approved.net_minor) return false;
  return now.groups.every((group) => {
    const before = approved.groups.find((one) => one.group === group.group);
    if (before === undefined || group.given_minor > before.given_minor) return false;
    return group.given_minor * before.listed_minor <= before.given_minor * group.listed_minor;
  });
}

function whyAsk({
  approvals,
  covering,
}: {
  readonly approvals: readonly Approval[];
  readonly covering: readonly Approval[];
}) {
  const [last] = covering;
  if (last?.state === 'refused' || last?.state === 'withdrawn') return last.state;
  const [newest] = approvals;
  if (newest === undefined) return 'never asked';
  return newest.state === 'refused' || newest.state === 'withdrawn' ? newest.state : 'lower since';
}
