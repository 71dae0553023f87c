/*
 * Blocks of a quote on money: priced lines with their reasons, totals, payment, and options side by side.
 * Invariant: what is printed is what was priced; nothing is added up here.
 * Not here: working a price out (pricing).
 * Read next: quote-paper.ts.
 */

import { countText, hoursText, massText, moneyText, windowText } from '#lib/documents/words/print-values.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { sourceIn } from '#lib/units/us-beside.ts';
import type { Block, TableRow } from './paper.ts';
import type { PriceInput } from './paper-inputs.ts';
import { optionTitle, type QuoteOptionInput } from './quote-option-input.ts';

export interface PriceBlocksInput {
  readonly price: PriceInput;
  readonly system: UnitSystem;
  readonly payment: readonly string[];
}

export function priceBlocks({ price, system, payment }: PriceBlocksInput): readonly Block[] {
  const money = (minor: number) => moneyText(minor, price.currency);
  const rows: TableRow[] = price.lines.map((line) => ({
    cells: [line.label, quantityText(line), line.taxCategory, money(line.amount_minor)],
    note: [sourceIn(line.how, system), ...(line.purchase === undefined ? [] : [line.purchase])].join(' '),
  }));
  rows.push({ cells: ['Net total', '', '', money(price.net_minor)], tone: 'total' });
  for (const tax of price.taxes)
    rows.push({
      cells: [
        `${tax.label}, ${tax.rate_percent} % on ${money(tax.base_minor)}`,
        '',
        tax.category,
        money(tax.tax_minor),
      ],
      tone: 'muted',
    });
  rows.push({ cells: [`Total to pay, ${price.currency}`, '', '', money(price.total_minor)], tone: 'total' });
  if (price.deposit_minor !== undefined && price.deposit_minor > 0)
    rows.push({
      cells: ['Deposit due with the order, part of the total', '', '', money(price.deposit_minor)],
      tone: 'muted',
    });
  const notes: Block[] = price.notes.map((text) => ({ kind: 'text', tone: 'muted', text }));
  return [
    {
      kind: 'table',
      caption: { level: 1, text: `Price for ${countText(price.days, 'day')} of hire` },
      columns: [
        { label: 'Item and how its price came about', share: 62 },
        { label: 'Number', share: 10, align: 'right' },
        { label: 'Tax', share: 8, align: 'centre' },
        { label: price.currency, share: 20, align: 'right' },
      ],
      rows,
    },
    ...notes,
    ...(payment.length === 0
      ? []
      : ([
          { kind: 'heading', level: 2, text: 'Payment' },
          { kind: 'list', marker: 'dot', items: payment },
        ] as const)),
  ];
}

function quantityText({ quantity, unit }: PriceInput['lines'][number]): string {
  const number = String(Math.round(quantity * 1000) / 1000);
  return unit === undefined ? number : `${number} ${UNIT_MARKS[unit] ?? unit}`;
}

/** Short enough for a narrow column; what is said in full stands in the note below. */
const UNIT_MARKS: Readonly<Record<string, string>> = {
  piece: '',
  'lump sum': '',
  hour: 'h',
  day: 'd',
  kilometre: 'km',
  kilogram: 'kg',
  litre: 'l',
  metre: 'm',
  person: 'pers.',
};

/** Options side by side: what differs between them, with money last. */
export function comparison(options: readonly QuoteOptionInput[]): Block {
  const row = (label: string, cell: (option: QuoteOptionInput) => string): TableRow => ({
    cells: [label, ...options.map(cell)],
  });
  const money = ({ price }: QuoteOptionInput, minor: number) => moneyText(minor, price.currency);
  const sum = (option: QuoteOptionInput, pick: (kit: QuoteOptionInput['kits'][number]) => number) =>
    option.kits.reduce((all, kit) => all + pick(kit), 0);
  return {
    kind: 'table',
    columns: [
      { label: '', share: 22 },
      ...options.map((option, index) => ({
        label: optionTitle(option, index),
        share: 78 / options.length,
        align: 'right' as const,
      })),
    ],
    rows: [
      row('Dates', ({ context }) => windowText(context.site.window)),
      row('Crews', ({ context }) => countText(context.site.crews, 'crew')),
      row('Valves served', (option) => `${sum(option, ({ valves }) => valves)} of ${valvesOf(option)}`),
      row('Hours of the crews', (option) => hoursText(sum(option, ({ hours }) => hours))),
      row('Mass of the kits', (option) =>
        massText(
          sum(option, ({ mass_kg }) => mass_kg),
          option.context.system,
        ),
      ),
      row('Net total', (option) => money(option, option.price.net_minor)),
      {
        ...row('Total to pay', (option) => `${option.price.currency} ${money(option, option.price.total_minor)}`),
        tone: 'total',
      },
      ...(options.some(({ price }) => (price.deposit_minor ?? 0) > 0)
        ? [row('of it deposit', (option) => money(option, option.price.deposit_minor ?? 0))]
        : []),
    ],
  };
}

function valvesOf({ lines }: QuoteOptionInput): number {
  return lines.reduce((all, { line }) => all + line.qty, 0);
}
