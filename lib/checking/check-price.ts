/*
 * Prices a plan a second time: days, rates by trying every mix, typed lines, delivery, labour, discounts, waiver, tax, totals, deposit.
 * Invariant: own arithmetic in whole minor units from models, kits and the house's terms; of the price only its figures are read.
 * Not here: the words of a priced line, and which terms apply to a customer (services).
 * Read next: price-facts.ts, rental-mix.ts.
 */
import { type Discrepancy, holds, same } from './discrepancy.ts';
import { groupsOf } from './expected-allowances.ts';
import type { ExpectedLine } from './expected-line.ts';
import { expectedLines } from './expected-lines.ts';
import { chargedDays, type PricedFigures, type PriceFacts } from './price-facts.ts';
import { roundHalfAway } from './round-half-away.ts';

export function checkPrice(facts: PriceFacts): readonly Discrepancy[] {
  const { priced, terms } = facts;
  const expected = expectedLines(facts);
  return [
    ...same({ code: 'price-days', what: 'The days charged', expected: chargedDays(facts), found: priced.days }),
    ...holds(priced.currency === terms.currency, {
      code: 'price-currency',
      sentence: `The price is in ${priced.currency}, the terms are in ${terms.currency}.`,
      expected: terms.currency,
      found: priced.currency,
    }),
    ...facts.kits.flatMap(({ items }) => items.flatMap((need) => checkKnown(facts, need.item))),
    ...checkLines(priced.lines, expected),
    ...checkGroups(facts, expected),
    ...checkTaxes(facts, expected),
    ...checkTotals(facts, expected),
  ];
}

function checkKnown({ models }: PriceFacts, number: string): readonly Discrepancy[] {
  return holds(
    models.some((model) => model.number === number),
    {
      code: 'price-item-unknown',
      sentence: `A kit holds ${number}, which no catalogue prices.`,
      expected: 'a model of the catalogue',
      found: number,
    },
  );
}

function checkLines(lines: PricedFigures['lines'], expected: readonly ExpectedLine[]): readonly Discrepancy[] {
  const wanted = named(expected).map(({ name }) => name);
  const given = named(lines).map(({ name }) => name);
  const right = new Map(named(expected).map(({ name, line }) => [name, line]));
  return [
    ...holds(wanted.toSorted().join() === given.toSorted().join(), {
      code: 'price-lines',
      sentence: 'The price does not have the lines that the plan, the terms and the Desk ask for, each once.',
      expected: wanted.join(', '),
      found: given.join(', '),
    }),
    ...named(lines).flatMap(({ name, line }) => {
      const one = right.get(name);
      return one === undefined ? [] : checkLine({ name, line, right: one });
    }),
  ];
}

/** Kind and number, and which of its kind where there are several. */
function named<Line extends { readonly kind: string; readonly number: string }>(lines: readonly Line[]) {
  return lines.map((line, index) => {
    const before = lines.slice(0, index).filter((one) => one.kind === line.kind && one.number === line.number).length;
    return { line, name: `${line.kind} ${line.number}`.trim() + (before === 0 ? '' : ` (${before + 1})`) };
  });
}

interface LineCheck {
  readonly name: string;
  readonly line: PricedFigures['lines'][number];
  readonly right: ExpectedLine;
}

function checkLine({ name, line, right }: LineCheck): readonly Discrepancy[] {
  const whole = Number.isSafeInteger(line.net_minor) && Number.isSafeInteger(line.unit_minor);
  return [
    ...holds(whole, {
      code: 'price-not-whole',
      sentence: `An amount of ${name} is no whole number of minor units.`,
      expected: 'whole minor units',
      found: line.net_minor,
    }),
    ...same({
      code: 'price-quantity',
      what: `The quantity of ${name}`,
      expected: right.quantity,
      found: line.quantity,
    }),
    ...holds(line.unit === right.counted, {
      code: 'price-counted',
      sentence: `${name} counts ${line.unit ?? 'pieces'}, and not ${right.counted ?? 'pieces'}.`,
      expected: right.counted ?? '',
      found: line.unit ?? '',
    }),
    ...exact({ code: 'price-unit', what: `What one of ${name} costs`, expected: right.unit, found: line.unit_minor }),
    ...exact({ code: 'price-line', what: `What ${name} costs`, expected: right.net, found: line.net_minor }),
    ...holds(line.tax === right.tax, {
      code: 'price-tax-category',
      sentence: `${name} is taxed as ${line.tax}; the terms say ${right.tax}.`,
      expected: right.tax,
      found: line.tax,
    }),
    ...holds(line.purchase_after_days === right.purchaseAfterDays, {
      code: 'price-purchase-days',
      sentence: `Buying ${name} would be cheaper after ${right.purchaseAfterDays ?? 'no number of'} days, not ${line.purchase_after_days ?? 'never'}.`,
      expected: String(right.purchaseAfterDays),
      found: String(line.purchase_after_days),
    }),
  ];
}

/** What a discount is judged by: each group at list prices, and what is given of it. */
function checkGroups(facts: PriceFacts, expected: readonly ExpectedLine[]): readonly Discrepancy[] {
  const charged = expected.filter(({ kind }) => kind !== 'discount' && kind !== 'waiver');
  const right = groupsOf({ charged, facts });
  const { groups } = facts.priced;
  return [
    ...holds(right.map(({ group }) => group).join() === groups.map(({ group }) => group).join(), {
      code: 'price-groups',
      sentence: 'The groups of lines are not those that the price has.',
      expected: right.map(({ group }) => group).join(', '),
      found: groups.map(({ group }) => group).join(', '),
    }),
    ...groups.flatMap((found, index) => [
      ...exact({
        code: 'price-listed',
        what: `What ${found.group} costs at list prices`,
        expected: right[index]?.listed ?? 0,
        found: found.listed_minor,
      }),
      ...exact({
        code: 'price-given',
        what: `What is given away of ${found.group}`,
        expected: right[index]?.given ?? 0,
        found: found.given_minor,
      }),
    ]),
  ];
}

/** EN 16931: taxable amounts are summed by category, and tax is rounded once for each. */
function taxesOf({ terms }: PriceFacts, lines: readonly ExpectedLine[]) {
  return terms.taxCategories.flatMap((category) => {
    const mine = lines.filter((line) => line.tax === category.code);
    if (mine.length === 0) return [];
    const taxable = mine.reduce((sum, line) => sum + line.net, 0);
    return [{ ...category, taxable, tax: roundHalfAway(taxable * category.percent, 100) }];
  });
}

function checkTaxes(facts: PriceFacts, expected: readonly ExpectedLine[]): readonly Discrepancy[] {
  const taxes = taxesOf(facts, expected);
  const { priced } = facts;
  return [
    ...holds(taxes.map(({ code }) => code).join() === priced.taxes.map(({ code }) => code).join(), {
      code: 'price-taxes',
      sentence: 'The taxes are not those of the categories that the lines fall into, each once.',
      expected: taxes.map(({ code }) => code).join(', '),
      found: priced.taxes.map(({ code }) => code).join(', '),
    }),
    ...priced.taxes.flatMap((found) => {
      const right = taxes.find(({ code }) => code === found.code);
      if (right === undefined) return [];
      return [
        ...holds(right.name === found.name && right.reason === found.reason, {
          code: 'price-tax-words',
          sentence: `Tax ${found.code} does not bear the name and reason of the house's terms.`,
          expected: [right.name, right.reason].join(': '),
          found: [found.name, found.reason].join(': '),
        }),
        ...same({
          code: 'price-tax-rate',
          what: `The rate of ${found.code}`,
          expected: right.percent,
          found: found.percent,
        }),
        ...exact({
          code: 'price-taxable',
          what: `What is taxed as ${found.code}`,
          expected: right.taxable,
          found: found.taxable_minor,
        }),
        ...exact({ code: 'price-tax', what: `The tax ${found.code}`, expected: right.tax, found: found.tax_minor }),
      ];
    }),
  ];
}

function checkTotals(facts: PriceFacts, expected: readonly ExpectedLine[]): readonly Discrepancy[] {
  const { priced, depositPercent } = facts;
  const sum = (values: readonly number[]) => values.reduce((all, one) => all + one, 0);
  const hired = expected.filter(({ kind }) => kind === 'hire' || kind === 'workshop enquiry');
  const net = sum(expected.map((line) => line.net));
  const tax = sum(taxesOf(facts, expected).map((one) => one.tax));
  const gross = net + tax;
  const deposit = depositPercent === null ? 0 : roundHalfAway(gross * depositPercent, 100);
  return [
    ...exact({
      code: 'price-hire',
      what: 'The hire',
      expected: sum(hired.map((line) => line.net)),
      found: priced.hire_minor,
    }),
    ...exact({ code: 'price-net', what: 'The net total', expected: net, found: priced.net_minor }),
    ...exact({ code: 'price-tax-total', what: 'The tax in all', expected: tax, found: priced.tax_minor }),
    ...exact({ code: 'price-gross', what: 'The total with tax', expected: gross, found: priced.gross_minor }),
    ...exact({ code: 'price-deposit', what: 'The deposit', expected: deposit, found: priced.deposit_minor }),
  ];
}

/** Money is compared to the last unit. */
function exact(at: {
  readonly code: string;
  readonly what: string;
  readonly expected: number;
  readonly found: number;
}): readonly Discrepancy[] {
  const { code, what, expected, found } = at;
  return holds(expected === found, {
    code,
    sentence: `${what} comes out at ${expected} minor units, not ${found}.`,
    expected,
    found,
  });
}
