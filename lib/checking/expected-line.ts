/*
 * A line of a price as the check works it out.
 * Invariant: amounts are whole minor units.
 * Not here: working it out (expected-lines.ts).
 * Read next: expected-lines.ts.
 */
export interface ExpectedLine {
  readonly kind: string;
  readonly number: string;
  readonly quantity: number;
  /** Said of typed lines only. */
  readonly counted?: string;
  readonly unit: number;
  readonly net: number;
  readonly tax: string;
  readonly purchaseAfterDays: number | null;
}
