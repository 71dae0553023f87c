import { moneyText } from '#lib/documents/words/print-values.ts';
import type { PlanSummary } from '#lib/services/plans/plan-view.ts';

type Preference = PlanSummary['preference'];

/** What each preference goes for, in words. */
export const PREFERENCE_NAMES: Readonly<Record<Preference, string>> = {
  cost: 'Least cost',
  pieces: 'Fewest pieces',
  time: 'Shortest time',
  surest: 'Surest at the first visit',
};

const PROOFS: Readonly<Record<string, string>> = {
  proven: 'Proven: no plan does better',
  'proven by an unchecked solver call': 'Reported best by the solver; not checked a second time',
  bounded: 'Good, not proven best: the search budget was used up',
  halted: 'Halted before it was finished',
};

export function proofText(proof: string): string {
  return PROOFS[proof] ?? proof;
}

export function gapText(gap: number): string {
  if (gap <= 1e-9) return 'none';
  return `at most ${(gap * 100).toFixed(gap < 0.001 ? 3 : 1)} %`;
}

export const ROLE_NAMES: Readonly<Record<string, string>> = {
  drive: 'Drives',
  head: 'Heads',
  adapter: 'Adapters',
  extension: 'Extensions',
  restraint: 'Restraints',
  option: 'Options',
  accessory: 'Accessories',
};

/** An amount without what is less than one of its currency: for axes and bars. */
export function wholeAmount(amount_minor: number, currency: string): string {
  return moneyText(Math.round(amount_minor), currency).replace(/\.\d+$/, '');
}

/** In the house’s own form: what shows it turns it into the person’s. */
export function amountText(currency: string, amount_minor: number): string {
  return `${moneyText(amount_minor, currency)} ${currency}`;
}
