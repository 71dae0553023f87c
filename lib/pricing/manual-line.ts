/*
 * Lines that somebody at the Desk adds to a price: transport, operated hire, training, consumables, sale, re-hired and made-to-fit pieces.
 * Invariant: an amount is quantity times unit price, rounded once; a quantity has at most three decimals, so that no binary fraction decides a half.
 * Not here: reading what was typed (lib/contracts/price-choices.ts).
 * Read next: price-plan.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import { type Minor, roundMinor, toMinor } from '#lib/money/money.ts';
import type { ManualUnit } from './manual-units.ts';
import type { PricedLine } from './priced-plan.ts';
import { tellAmount, tellCount } from './tell.ts';

export const MANUAL_KINDS = [
  'transport',
  'operated hire',
  'training',
  'consumables',
  'sale',
  're-hired',
  'made to fit',
] as const;
export type ManualKind = (typeof MANUAL_KINDS)[number];

/** What is hired in from another house for this hire; its cost is for the Desk and on no paper. */
export interface ReHired {
  readonly house: string;
  readonly starts_on: string;
  readonly ends_before: string;
  readonly cost_minor: Minor;
}

export interface ManualLine {
  readonly id: string;
  readonly kind: ManualKind;
  readonly text: string;
  readonly quantity: number;
  readonly unit: ManualUnit;
  readonly unit_minor: Minor;
  /** Charged for each charged day, or once. */
  readonly per: 'day' | 'once';
  /** Tax category code. */
  readonly tax: string;
  /** Unit price of the house's price list where the line was taken from it. */
  readonly list_minor: Minor | null;
  readonly rehired: ReHired | null;
}

export interface ManualQuestion {
  readonly line: ManualLine;
  readonly days: number;
  readonly currency: string;
}

export function manualPriced({ line, days, currency }: ManualQuestion): PricedLine {
  invariant(line.unit_minor >= 0, 'EN 16931, BR-27: the price of one is never below nought.');
  return {
    kind: line.kind,
    number: '',
    name: line.text,
    quantity: chargedThousandths({ line, days }) / 1000,
    unit: line.per === 'day' && !TIMED.includes(line.unit) ? 'day' : line.unit,
    unit_minor: line.unit_minor,
    net_minor: manualNet({ line, days, unit_minor: line.unit_minor }),
    tax: line.tax,
    sentence: `${tellQuantity({ line, days, currency })}${WORDS[line.kind] ?? ''}`,
    purchase_after_days: null,
  };
}

/** What the line comes to at the price of the list, or at its own where it was not taken from the list or costs more. */
export function listedNet({ line, days }: Omit<ManualQuestion, 'currency'>): Minor {
  const listed = line.list_minor ?? line.unit_minor;
  return manualNet({ line, days, unit_minor: toMinor(Math.max(listed, line.unit_minor)) });
}

/** Charged by time already: each day adds hours or days, not pieces. */
const TIMED: readonly ManualUnit[] = ['hour', 'day', 'kilometre', 'kilogram', 'litre', 'metre'];

const WORDS: Partial<Readonly<Record<ManualKind, string>>> = {
  're-hired': ' Hired in for you from another house, whose terms hold for it too.',
  'made to fit': ' Made to fit: indicative until the workshop has confirmed drawing, price and date.',
};

interface NetQuestion {
  readonly line: ManualLine;
  readonly days: number;
  readonly unit_minor: Minor;
}

function manualNet({ line, days, unit_minor }: NetQuestion): Minor {
  return roundMinor((chargedThousandths({ line, days }) * unit_minor) / 1000);
}

function chargedThousandths({ line, days }: Omit<ManualQuestion, 'currency'>): number {
  const thousandths = Math.round(line.quantity * 1000);
  invariant(
    line.quantity > 0 && Math.abs(line.quantity * 1000 - thousandths) < 1e-6,
    `A quantity is above nought with at most three decimals, not ${line.quantity}.`,
  );
  return line.per === 'day' ? thousandths * days : thousandths;
}

function tellQuantity({ line, days, currency }: ManualQuestion): string {
  const each = tellAmount({ minor: line.unit_minor, currency });
  if (line.unit === 'lump sum' && line.quantity === 1 && line.per === 'once') return 'A lump sum.';
  const many = line.unit === 'person' ? 'persons' : line.unit === 'lump sum' ? 'lump sums' : `${line.unit}s`;
  const count = tellCount({ count: line.quantity, one: line.unit, many });
  if (line.per === 'once') return `${count} at ${each} each.`;
  return `${count} on each of ${tellCount({ count: days, one: 'charged day', many: 'charged days' })}, at ${each} each a day.`;
}
