/*
 * Money as integer minor units of one ISO 4217 currency.
 * Invariant: an amount is a safe integer; amounts of two currencies are never added.
 * Not here: rates and prices (pricing), printing with separators (documents).
 * Read next: currency.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';

declare const minor: unique symbol;
/** Integer count of the currency's minor unit (cents, pence, yen). */
export type Minor = number & { readonly [minor]: true };

export interface Money {
  readonly amount_minor: Minor;
  /** ISO 4217 alphabetic code. */
  readonly currency: string;
}

export function toMinor(value: number): Minor {
  invariant(Number.isSafeInteger(value), `An amount of money is a whole number of minor units, not ${value}.`);
  return value as Minor;
}

export function sumMinor(amounts: readonly Minor[]): Minor {
  return toMinor(amounts.reduce<number>((sum, amount) => sum + amount, 0));
}

/** Rounds half away from zero, as EN 16931 amounts are commonly rounded. */
export function roundMinor(value: number): Minor {
  const sign = value < 0 ? -1 : 1;
  return toMinor(sign * Math.floor(Math.abs(value) + 0.5 + 1e-9));
}
