import { gapText, PREFERENCE_NAMES, proofText } from '#app/_ui/plan/plan-words.ts';
import { hoursText, massText } from '#lib/documents/words/print-values.ts';
import type { PlanSummary, PlanView } from '#lib/services/plans/plan-view.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import type { Money } from './money-text.ts';
import type { PreferenceRow } from './plan-preferences.client.tsx';

/** The plans with every figure as text, and what each has more or less than each other one. */
export function preferenceRows(
  { summaries }: PlanView,
  at: { readonly system: UnitSystem; readonly money: Money; readonly priceMoney: Money },
): readonly PreferenceRow[] {
  const { system, money, priceMoney } = at;
  return summaries.map((summary) => ({
    preference: summary.preference,
    name: PREFERENCE_NAMES[summary.preference],
    served: `${summary.served} of ${summary.asked}`,
    cost: money(Math.round(summary.cost_minor)),
    price: priceMoney(summary.price_minor),
    hours: hoursText(summary.hours),
    mass: massText(summary.mass_kg, system),
    pieces: String(summary.pieces),
    gap: gapText(summary.gap),
    proof: proofText(summary.proof),
    against: Object.fromEntries(summaries.map((base) => [base.preference, differences({ ...at, summary, base })])),
  }));
}

function differences(at: {
  readonly summary: PlanSummary;
  readonly base: PlanSummary;
  readonly money: Money;
  readonly priceMoney: Money;
  readonly system: UnitSystem;
}): PreferenceRow['against'][string] {
  const { summary, base, system } = at;
  if (summary === base) return null;
  const told = (pick: (one: PlanSummary) => number, print: (value: number) => string): string => {
    const more = pick(summary) - pick(base);
    const text = print(Math.abs(more));
    return text === print(0) ? 'same' : `${more > 0 ? '+' : '−'}${text}`;
  };
  const money = (value: number): string => at.money(Math.round(value));
  return {
    served: told((one) => one.served, String),
    cost: told((one) => one.cost_minor, money),
    price: told((one) => one.price_minor, at.priceMoney),
    hours: told((one) => one.hours, hoursText),
    mass: told(
      (one) => one.mass_kg,
      (value) => massText(value, system),
    ),
    pieces: told((one) => one.pieces, String),
  };
}
