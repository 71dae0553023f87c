/*
 * The priced lines of a quote as a table for a spreadsheet, with taxes and totals, option by option.
 * Invariant: every priced line stands on one row; amounts have all decimals of the currency; the sum of the lines is the net total.
 * Not here: writing CSV or a workbook (services).
 * Read next: lines-table.ts.
 */

import type { QuoteOptionInput } from '#lib/documents/papers/quote-option-input.ts';
import { optionTitle } from '#lib/documents/papers/quote-option-input.ts';
import { decimalText } from '#lib/money/currency.ts';
import type { LinesTable, TableCell } from './lines-table.ts';

type PricedRow = readonly [
  what: string,
  quantity: TableCell,
  unit: TableCell,
  tax: string,
  amount_minor: number,
  how: string,
];

export function priceTable(options: readonly QuoteOptionInput[]): LinesTable {
  const [first] = options;
  const currency = first?.price.currency ?? '';
  const several = options.length > 1;
  return {
    headings: [
      ...(several ? ['option'] : []),
      'what',
      'quantity',
      'unit',
      'tax category',
      `amount, ${currency}`,
      'how it came about',
    ],
    rows: options.flatMap((option, index) =>
      pricedRows(option).map(([what, quantity, unit, tax, minor, how]): readonly TableCell[] => [
        ...(several ? [optionTitle(option, index)] : []),
        what,
        quantity,
        unit,
        tax,
        Number(decimalText(minor, currency)),
        how,
      ]),
    ),
  };
}

function pricedRows({ price }: QuoteOptionInput): readonly PricedRow[] {
  return [
    ...price.lines.map(
      (line): PricedRow => [
        line.label,
        Math.round(line.quantity * 1000) / 1000,
        line.unit ?? 'piece',
        line.taxCategory,
        line.amount_minor,
        line.how,
      ],
    ),
    ['Net total', null, null, '', price.net_minor, 'the sum of the lines'],
    ...price.taxes.map(
      (tax): PricedRow => [
        tax.label,
        null,
        null,
        tax.category,
        tax.tax_minor,
        `${tax.rate_percent} % of what is taxed so`,
      ],
    ),
    ['Total to pay', null, null, '', price.total_minor, 'net total and taxes'],
    ...((price.deposit_minor ?? 0) > 0
      ? [['Deposit, part of the total', null, null, '', price.deposit_minor ?? 0, ''] satisfies PricedRow]
      : []),
  ];
}
