/*
 * Totals of a priced document with tax per category.
 * Invariant: line amounts are rounded already; tax is rounded once per category, never per line.
 * Not here: which category a line belongs to (price-plan.ts).
 * Read next: price-plan.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import { type Minor, roundMinor, sumMinor } from '#lib/money/money.ts';

/** Category codes of UNTDID 5305 as EN 16931 uses them: S standard, Z zero, E exempt, AE reverse charge, O outside scope. */
export interface TaxCategory {
  readonly code: string;
  readonly name: string;
  readonly percent: number;
  /** Why no tax is charged; required by EN 16931 for E, AE and O. */
  readonly reason?: string;
}

export interface TaxableLine {
  readonly net_minor: Minor;
  readonly tax: string;
}

export interface TaxSum extends TaxCategory {
  readonly taxable_minor: Minor;
  readonly tax_minor: Minor;
}

export interface Totals {
  readonly net_minor: Minor;
  readonly taxes: readonly TaxSum[];
  readonly tax_minor: Minor;
  readonly gross_minor: Minor;
}

/** EN 16931 rules BR-CO-10, BR-CO-13, BR-CO-14, BR-CO-15 and BR-CO-17. */
export function taxTotals({
  lines,
  categories,
}: {
  readonly lines: readonly TaxableLine[];
  readonly categories: readonly TaxCategory[];
}): Totals {
  for (const line of lines) {
    invariant(
      categories.some(({ code }) => code === line.tax),
      `The tax category ${line.tax} is not among the house's categories.`,
    );
  }
  const taxes = categories
    .filter(({ code }) => lines.some((line) => line.tax === code))
    .map((category): TaxSum => {
      const taxable = sumMinor(lines.filter((line) => line.tax === category.code).map((line) => line.net_minor));
      return { ...category, taxable_minor: taxable, tax_minor: roundMinor((taxable * category.percent) / 100) };
    });
  const net = sumMinor(lines.map((line) => line.net_minor));
  const tax = sumMinor(taxes.map(({ tax_minor }) => tax_minor));
  return { net_minor: net, taxes, tax_minor: tax, gross_minor: sumMinor([net, tax]) };
}
