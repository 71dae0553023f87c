/*
 * The terms that turn a plan into a price: waiver, taxes, delivery bands, labour, discount, deposit.
 * Invariant: terms are data of the house; nothing in pricing knows a figure of its own.
 * Not here: reading them from a house file (lib/contracts/house.ts).
 * Read next: price-plan.ts.
 */
import type { Minor } from '#lib/money/money.ts';
import type { TaxCategory } from './tax-totals.ts';

export interface WaiverTerms {
  readonly percent: number;
  /** What the waiver does not cover, as it stands in the quote. */
  readonly leavesOut: readonly string[];
}

export interface DeliveryBand {
  readonly id: string;
  readonly name: string;
  readonly delivery_minor: Minor;
  readonly collection_minor: Minor;
  /** Carried for the flat amount; each started hundred kilograms more is charged. */
  readonly included_kg: number;
  readonly per_extra_100_kg_minor: Minor;
}

export interface DepositTerms {
  readonly percentOfGross: number;
  readonly reason: string;
}

export interface PricingTerms {
  readonly currency: string;
  readonly taxCategories: readonly TaxCategory[];
  /** Category code by what is priced. */
  readonly taxOf: {
    readonly hire: string;
    readonly waiver: string;
    readonly sale: string;
    readonly delivery: string;
    readonly labour: string;
  };
  readonly waiver: WaiverTerms;
  readonly daysPerWeek: 5 | 7;
  /** Credit for sale items that come back unused, percent of their price. */
  readonly unusedReturnCreditPercent: number;
}

/** Only where our people work; otherwise labour steers the plan and is not priced. */
export interface LabourCharge {
  readonly hours: number;
  readonly minor_per_hour: Minor;
}

export interface Discount {
  readonly percent: number;
  readonly reason: string;
}
