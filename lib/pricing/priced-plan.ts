/*
 * What a priced plan holds: lines that say how they came about, taxes, totals, deposit.
 * Invariant: net is the sum of the lines, gross is net plus the taxes.
 * Not here: working it out (price-plan.ts).
 * Read next: price-plan.ts.
 */
import type { Minor } from '#lib/money/money.ts';
import type { LineGroup } from './line-groups.ts';
import type { ManualUnit } from './manual-units.ts';
import type { TaxSum } from './tax-totals.ts';

export const PRICED_KINDS = [
  'hire',
  'workshop enquiry',
  'sale',
  'waiver',
  'delivery',
  'collection',
  'labour',
  'discount',
  'transport',
  'operated hire',
  'training',
  'consumables',
  're-hired',
  'made to fit',
] as const;
export type PricedKind = (typeof PRICED_KINDS)[number];

export interface PricedLine {
  readonly kind: PricedKind;
  /** Model number, or empty where the line is not a model. */
  readonly number: string;
  readonly name: string;
  readonly quantity: number;
  /** What the quantity counts; pieces, or hours of labour, where it is absent. */
  readonly unit?: ManualUnit;
  readonly unit_minor: Minor;
  readonly net_minor: Minor;
  /** Tax category code. */
  readonly tax: string;
  /** How it came about. */
  readonly sentence: string;
  /** Days of hire after which buying would have been cheaper; null where it never is or does not apply. */
  readonly purchase_after_days: number | null;
}

/** A group of lines at the house's own prices, and what is given away of it. */
export interface GroupSum {
  readonly group: LineGroup;
  readonly listed_minor: Minor;
  readonly given_minor: Minor;
}

export interface PricedPlan {
  readonly currency: string;
  readonly days: number;
  readonly lines: readonly PricedLine[];
  readonly hire_minor: Minor;
  readonly groups: readonly GroupSum[];
  readonly taxes: readonly TaxSum[];
  readonly net_minor: Minor;
  readonly tax_minor: Minor;
  readonly gross_minor: Minor;
  readonly deposit_minor: Minor;
  readonly notes: readonly string[];
}
