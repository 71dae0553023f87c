/*
 * Discounts as lines of a price: on a group of lines, and on the whole quote after those.
 * Invariant: one line a group and tax category, rounded once; the damage waiver carries no discount and is taken on what is left of the hire.
 * Not here: how much may be given without approval (discount-approval.ts).
 * Read next: price-plan.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import { type Minor, roundMinor, sumMinor, toMinor } from '#lib/money/money.ts';
import { GROUP_NAMES, LINE_GROUPS, type LineGroup } from './line-groups.ts';
import type { PricedKind, PricedLine } from './priced-plan.ts';
import { tellAmount } from './tell.ts';
import type { Discount, PricingTerms } from './terms.ts';

export interface DiscountChoices {
  readonly groups: readonly (Discount & { readonly group: LineGroup })[];
  readonly whole: Discount | null;
}

export const NO_DISCOUNTS: DiscountChoices = { groups: [], whole: null };

const GROUP_OF: Readonly<Record<PricedKind, LineGroup | null>> = {
  hire: 'hire',
  'workshop enquiry': 'hire',
  sale: 'goods',
  consumables: 'goods',
  'made to fit': 'goods',
  delivery: 'transport',
  collection: 'transport',
  transport: 'transport',
  labour: 'people',
  'operated hire': 'people',
  training: 'people',
  're-hired': 're-hired',
  waiver: null,
  discount: null,
};

export function groupOf(kind: PricedKind): LineGroup | null {
  return GROUP_OF[kind];
}

/** What is given away, group by group and category by category, with the lines that say so. */
export interface DiscountedLines {
  readonly lines: readonly PricedLine[];
  readonly groups: readonly { readonly group: LineGroup; readonly before_minor: Minor; readonly given_minor: Minor }[];
}

export interface DiscountInput {
  readonly lines: readonly PricedLine[];
  readonly choices: DiscountChoices;
  readonly terms: Pick<PricingTerms, 'currency' | 'taxCategories'>;
}

export function discountLines({ lines, choices, terms }: DiscountInput): DiscountedLines {
  const parts = partsOf({ lines, choices, terms });
  const whole = choices.whole;
  return {
    lines: [
      ...parts.flatMap(({ own }) => (own === null ? [] : [own])),
      ...(whole === null ? [] : wholeLines({ parts, whole, terms })),
    ],
    groups: LINE_GROUPS.flatMap((group) => {
      const mine = parts.filter((part) => part.group === group);
      if (mine.length === 0) return [];
      return [
        {
          group,
          before_minor: sumMinor(mine.map(({ before }) => before)),
          given_minor: toMinor(mine.reduce((sum, part) => sum + part.given + shareOf(part.left, whole), 0)),
        },
      ];
    }),
  };
}

interface Part {
  readonly group: LineGroup;
  readonly tax: string;
  readonly before: Minor;
  readonly given: Minor;
  readonly left: Minor;
  readonly own: PricedLine | null;
}

/** Each group, split by tax category: an allowance of a document belongs to one category (EN 16931, BG-20). */
function partsOf({ lines, choices, terms }: DiscountInput): readonly Part[] {
  return LINE_GROUPS.flatMap((group) =>
    terms.taxCategories.flatMap(({ code }): readonly Part[] => {
      const mine = lines.filter((line) => groupOf(line.kind) === group && line.tax === code);
      if (mine.length === 0) return [];
      const before = sumMinor(mine.map(({ net_minor }) => net_minor));
      const discount = choices.groups.find((one) => one.group === group) ?? null;
      const given = shareOf(before, discount);
      const left = toMinor(before - given);
      const own =
        discount === null || given === 0 ? null : ownLine({ group, tax: code, before, given, discount, terms });
      return [{ group, tax: code, before, given, left, own }];
    }),
  );
}

interface OwnLine {
  readonly group: LineGroup;
  readonly tax: string;
  readonly before: Minor;
  readonly given: Minor;
  readonly discount: Discount;
  readonly terms: DiscountInput['terms'];
}

function ownLine({ group, tax, before, given, discount, terms }: OwnLine): PricedLine {
  const name = GROUP_NAMES[group];
  const basis = tellAmount({ minor: before, currency: terms.currency });
  return allowance({
    name: `Discount on ${name}`,
    given,
    tax,
    sentence: `${discount.percent} % off ${name} of ${basis}: ${discount.reason}.`,
  });
}

interface WholeInput {
  readonly parts: readonly Part[];
  readonly whole: Discount;
  readonly terms: DiscountInput['terms'];
}

function wholeLines({ parts, whole, terms }: WholeInput): readonly PricedLine[] {
  return terms.taxCategories.flatMap(({ code }) => {
    const left = sumMinor(parts.filter(({ tax }) => tax === code).map((part) => part.left));
    const given = shareOf(left, whole);
    if (given === 0) return [];
    const basis = tellAmount({ minor: left, currency: terms.currency });
    return [
      allowance({
        name: 'Discount on the whole quote',
        given,
        tax: code,
        sentence: `${whole.percent} % off ${basis}, which is what is taxed as ${code}, without the damage waiver: ${whole.reason}.`,
      }),
    ];
  });
}

function shareOf(amount: Minor, discount: Discount | null): Minor {
  if (discount === null) return toMinor(0);
  invariant(
    discount.percent >= 0 && discount.percent <= 100,
    `A discount lies between 0 and 100 %, not ${discount.percent}.`,
  );
  // Hundredths of a percent are whole numbers: no binary fraction decides a half.
  return roundMinor((amount * Math.round(discount.percent * 100)) / 10_000);
}

function allowance(at: {
  readonly name: string;
  readonly given: Minor;
  readonly tax: string;
  readonly sentence: string;
}): PricedLine {
  const amount = toMinor(-at.given);
  return {
    kind: 'discount',
    number: '',
    name: at.name,
    quantity: 1,
    unit_minor: amount,
    net_minor: amount,
    tax: at.tax,
    sentence: at.sentence,
    purchase_after_days: null,
  };
}
