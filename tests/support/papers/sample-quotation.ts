/** A quotation whose price is worked from the lines and categories given, as the pricing does it. */
import type { QuotationInput, QuotationLineInput } from '#lib/documents/exchange/quotation-xml.ts';
import { toMinor } from '#lib/money/money.ts';
import { type TaxCategory, taxTotals } from '#lib/pricing/tax-totals.ts';
import { SAMPLE_CONTEXT } from './sample-plan.ts';

export function sampleQuotation({
  lines,
  categories,
  currency = 'EUR',
}: {
  readonly lines: readonly QuotationLineInput[];
  readonly categories: readonly TaxCategory[];
  readonly currency?: string;
}): QuotationInput {
  const totals = taxTotals({
    lines: lines.map((line) => ({ net_minor: toMinor(line.net_minor), tax: line.taxCategory })),
    categories,
  });
  return {
    context: SAMPLE_CONTEXT,
    validUntil: '2031-04-03',
    currency,
    lines,
    taxes: totals.taxes,
    net_minor: totals.net_minor,
    tax_minor: totals.tax_minor,
    gross_minor: totals.gross_minor,
    notes: ['The figures are estimates until they are measured.'],
    terms: ['Charge ends at collection.', 'Prices hold until the date given.'],
  };
}

export function charge(line: Partial<QuotationLineInput> & { readonly net_minor: number }): QuotationLineInput {
  return {
    kind: 'charge',
    number: 'D-214',
    name: 'Battery drive, medium',
    sentence: '5 days at the cheapest mix of rates.',
    quantity: 1,

    unit_minor: line.net_minor,
    taxCategory: 'S',
    ...line,
  };
}
