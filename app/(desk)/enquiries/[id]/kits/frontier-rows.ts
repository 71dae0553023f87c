import { gapText, proofText } from '#app/_ui/plan/plan-words.ts';
import { countText, hoursText } from '#lib/documents/words/print-values.ts';
import { type FrontierPoint, frontierOf } from '#lib/services/plans/frontier-view.ts';
import type { StudyView } from '#lib/services/plans/study-enquiry.ts';

import type { Money } from './money-text.ts';

/** A plan of the frontier with its figures as text. */
export interface FrontierRow extends Pick<FrontierPoint, 'key' | 'days' | 'crews' | 'cost_minor' | 'isBest'> {
  readonly isWhole: boolean;
  readonly isNow: boolean;
  readonly terms: string;
  readonly cost: string;
  readonly served: string;
  readonly hours: string;
  readonly pieces: string;
  readonly gap: string;
  readonly proof: string;
}

export function frontierRows(
  study: StudyView,
  at: { readonly money: Money; readonly days: number; readonly crews: number; readonly fittingNothing: number },
): readonly FrontierRow[] {
  return frontierOf(study.cases).map((point) => ({
    key: point.key,
    days: point.days,
    crews: point.crews,
    cost_minor: point.cost_minor,
    isBest: point.isBest,
    isWhole: point.served === point.asked,
    isNow: point.days === at.days && point.crews === at.crews,
    terms: `${countText(point.days, 'day')}, ${countText(point.crews, 'crew')}`,
    cost: at.money(Math.round(point.cost_minor)),
    served: `${point.served} of ${point.asked + at.fittingNothing}`,
    hours: hoursText(point.hours),
    pieces: String(point.pieces),
    gap: gapText(point.gap),
    proof: proofText(point.proof),
  }));
}
