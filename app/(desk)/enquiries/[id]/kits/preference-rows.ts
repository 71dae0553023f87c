import { gapText, PREFERENCE_NAMES, proofText } from '#app/_ui/plan/plan-words.ts';
import { hoursText, massText } from '#lib/documents/words/print-values.ts';
import type { PlanBefore, PlanSummary, PlanView } from '#lib/services/plans/plan-view.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import type { Money } from './money-text.ts';
import { PLAN_BEFORE } from './plan-before.ts';
import type { PreferenceRow } from './plan-preferences.client.tsx';

interface Printing {
  readonly system: UnitSystem;
  readonly money: Money;
  readonly priceMoney: Money;
}

/** The plans with every figure as text, and what each has more or less than each other one and than the plan before. */
export function preferenceRows({ summaries, before }: PlanView, at: Printing): readonly PreferenceRow[] {
  const { system, money, priceMoney } = at;
  return summaries.map((summary) => {
    const others = summaries.map((base) => [
      base.preference,
      base === summary
        ? null
        : { ...figuresAgainst(summary, { base, at }), price: priceAgainst(summary, { base, at }) },
    ]);
    const was = before.find(({ preference }) => preference === summary.preference);
    const since = was === undefined ? null : { ...figuresAgainst(summary, { base: was, at }), price: '' };
    return {
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
      against: { ...Object.fromEntries(others), [PLAN_BEFORE]: since },
    };
  });
}

/** What the shown plan has more or less than the plan before it; undefined where it is the first. */
export function sinceBefore({ summaries, before, shown }: PlanView, at: Printing): string | undefined {
  const summary = summaries.find(({ preference }) => preference === shown);
  const was = before.find(({ preference }) => preference === shown);
  if (summary === undefined || was === undefined) return undefined;
  const { served, cost, hours, mass, pieces } = figuresAgainst(summary, { base: was, at });
  const all = { 'valves served': served, 'equipment and time': cost, 'crew hours': hours, mass, pieces };
  const changed = Object.entries(all).filter(([, told]) => told !== SAME);
  return changed.length === 0 ? 'nothing changed' : changed.map(([what, told]) => `${what} ${told}`).join(', ');
}

const SAME = 'same';

interface Base<Plan> {
  readonly base: Plan;
  readonly at: Printing;
}

function figuresAgainst(summary: PlanSummary, { base, at }: Base<PlanSummary | PlanBefore>) {
  const told = (pick: (one: PlanSummary | PlanBefore) => number, print: (value: number) => string): string =>
    more(pick(summary) - pick(base), print);
  return {
    served: told((one) => one.served, String),
    cost: told(
      (one) => one.cost_minor,
      (value) => at.money(Math.round(value)),
    ),
    hours: told((one) => one.hours, hoursText),
    mass: told(
      (one) => one.mass_kg,
      (value) => massText(value, at.system),
    ),
    pieces: told((one) => one.pieces, String),
  };
}

function priceAgainst(summary: PlanSummary, { base, at }: Base<PlanSummary>): string {
  return more(summary.price_minor - base.price_minor, at.priceMoney);
}

function more(by: number, print: (value: number) => string): string {
  const text = print(Math.abs(by));
  return text === print(0) ? SAME : `${by > 0 ? '+' : '−'}${text}`;
}
