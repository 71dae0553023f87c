/*
 * The frontier of cost and days as a screen shows it: each plan with whether another is at least as good in days, cost and valves served.
 * Invariant: a plan is marked best exactly when no other is as good in all three and better in one, or equal with fewer crews.
 * Not here: working the plans out (study-enquiry.ts).
 * Read next: study-enquiry.ts.
 */
import type { CaseFigures } from '#lib/planning/try-cases.ts';

export interface FrontierPoint extends Omit<CaseFigures, 'change'> {
  readonly days: number;
  readonly crews: number;
  /** No other plan needs as few days, costs as little and serves as many. */
  readonly isBest: boolean;
}

export function frontierOf(cases: readonly CaseFigures[]): readonly FrontierPoint[] {
  const points = cases
    .map(({ change, ...figures }) => ({ ...figures, days: change.days ?? 0, crews: change.crews ?? 0 }))
    .sort((a, b) => a.crews - b.crews || a.days - b.days);
  return points.map((point) => ({ ...point, isBest: !points.some((other) => beats(other, point)) }));
}

type Compared = Pick<FrontierPoint, 'days' | 'crews' | 'cost_minor' | 'served'>;

function beats(one: Compared, other: Compared): boolean {
  const isAsGood = one.days <= other.days && one.cost_minor <= other.cost_minor && one.served >= other.served;
  const isEqual = one.days === other.days && one.cost_minor === other.cost_minor && one.served === other.served;
  return isAsGood && (isEqual ? one.crews < other.crews : true);
}
