/*
 * What is given away of a price, worked out a second time: by group and tax category, then on the whole.
 * Invariant: own table of which line belongs to which group; amounts in whole minor units, each rounded once.
 * Not here: the damage waiver, which carries no discount, and whether a discount needs approval.
 * Read next: expected-lines.ts.
 */
import type { ExpectedLine } from './expected-line.ts';
import { chargedDays, type PriceFacts } from './price-facts.ts';
import { roundHalfAway } from './round-half-away.ts';

const GROUPS = ['hire', 'goods', 'transport', 'people', 're-hired'] as const;
type Group = (typeof GROUPS)[number];

const KINDS: Readonly<Record<Group, readonly string[]>> = {
  hire: ['hire', 'workshop enquiry'],
  goods: ['sale', 'consumables', 'made to fit'],
  transport: ['delivery', 'collection', 'transport'],
  people: ['labour', 'operated hire', 'training'],
  're-hired': ['re-hired'],
};

export interface Allowances {
  readonly lines: readonly { readonly net: number; readonly tax: string }[];
  readonly of: (group: Group) => { readonly before: number; readonly given: number };
}

interface Asked {
  readonly charged: readonly ExpectedLine[];
  readonly facts: Pick<PriceFacts, 'discounts' | 'terms'>;
}

export function allowances({ charged, facts }: Asked): Allowances {
  const { discounts, terms } = facts;
  const whole = discounts.whole?.percent ?? 0;
  const cells = GROUPS.flatMap((group) =>
    terms.taxCategories.map(({ code }) => {
      const before = charged
        .filter((line) => KINDS[group].includes(line.kind) && line.tax === code)
        .reduce((sum, { net }) => sum + net, 0);
      const percent = discounts.groups.find((one) => one.group === group)?.percent ?? 0;
      return { group, code, before, own: roundHalfAway(before * percent, 100) };
    }),
  );
  const onWhole = terms.taxCategories.map(({ code }) => ({
    tax: code,
    net: -roundHalfAway(
      cells.filter((cell) => cell.code === code).reduce((sum, { before, own }) => sum + before - own, 0) * whole,
      100,
    ),
  }));
  return {
    lines: [...cells.map(({ own, code }) => ({ net: -own, tax: code })), ...onWhole].filter(({ net }) => net !== 0),
    of: (group) => {
      const mine = cells.filter((cell) => cell.group === group);
      return {
        before: mine.reduce((sum, { before }) => sum + before, 0),
        given: mine.reduce((sum, { before, own }) => sum + own + roundHalfAway((before - own) * whole, 100), 0),
      };
    },
  };
}

/** Each group that has lines: at list prices, and what is given of that, prices typed below the list included. */
export function groupsOf({
  charged,
  facts,
}: {
  readonly charged: readonly ExpectedLine[];
  readonly facts: PriceFacts;
}) {
  const given = allowances({ charged, facts });
  const days = chargedDays(facts);
  return GROUPS.filter((group) => charged.some((line) => KINDS[group].includes(line.kind))).map((group) => {
    const under = facts.manual
      .filter(({ kind, list_minor, unit_minor }) => KINDS[group].includes(kind) && (list_minor ?? 0) > unit_minor)
      .reduce((sum, line) => {
        const counted = Math.round(line.quantity * 1000) * (line.per === 'day' ? days : 1);
        const net = (unit: number) => roundHalfAway(counted * unit, 1000);
        return sum + net(line.list_minor ?? 0) - net(line.unit_minor);
      }, 0);
    const sums = given.of(group);
    return { group, listed: sums.before + under, given: sums.given + under };
  });
}
