/*
 * Works the charges of a return out a second time, and adds a decided return up again with tax per category.
 * Invariant: own arithmetic in whole minor units from the facts and the quote's terms; of the pricing only figures are read.
 * Not here: the words of a line, and whether the Desk's reason is a good one.
 * Read next: return-facts.ts, round-half-away.ts.
 */
import { type Discrepancy, holds } from './discrepancy.ts';
import type { ChargeFigures, CheckedFact, CheckedReturn, ReturnFigures } from './return-facts.ts';
import { roundHalfAway } from './round-half-away.ts';

/** Every line that the facts ask for, each once, with its amount to the last minor unit. */
export function checkReturn(asked: CheckedReturn, lines: readonly ChargeFigures[]): readonly Discrepancy[] {
  const right = expectedCharges(asked);
  const names = (all: readonly ChargeFigures[]) => all.map((line) => `${line.kind} of ${line.about}`).toSorted();
  return [
    ...holds(names(right).join() === names(lines).join(), {
      code: 'return-lines',
      sentence: 'The return is not charged for what came back broken, dirty, late or not at all, each once.',
      expected: names(right).join(', '),
      found: names(lines).join(', '),
    }),
    ...lines.flatMap((line) => {
      const one = right.find(({ kind, about }) => kind === line.kind && about === line.about);
      return one === undefined ? [] : checkCharge(line, one);
    }),
  ];
}

/** The total of what was decided: quantity times price, lines summed by tax category, tax rounded once for each. */
export function checkReturnTotals(terms: CheckedReturn['terms'], found: ReturnFigures): readonly Discrepancy[] {
  const { lines } = found;
  const taxes = terms.taxCategories.flatMap(({ code, percent }) => {
    const mine = lines.filter(({ tax }) => tax === code);
    const taxable = total(mine.map(({ net_minor }) => net_minor));
    return mine.length === 0 ? [] : [{ code, percent, taxable, tax: roundHalfAway(taxable * percent, 100) }];
  });
  const net = total(lines.map(({ net_minor }) => net_minor));
  const tax = total(taxes.map((one) => one.tax));
  return [
    ...lines.flatMap(checkWhole),
    ...holds(found.currency === terms.currency, {
      code: 'return-currency',
      sentence: `The return is charged in ${found.currency}, the terms are in ${terms.currency}.`,
      expected: terms.currency,
      found: found.currency,
    }),
    ...holds(
      taxes.map(told).join() ===
        found.taxes.map((one) => told({ ...one, taxable: one.taxable_minor, tax: one.tax_minor })).join(),
      {
        code: 'return-taxes',
        sentence: 'The taxes are not those of the categories that the lines fall into, each rounded once.',
        expected: taxes.map(told).join(', '),
        found: found.taxes.map((one) => told({ ...one, taxable: one.taxable_minor, tax: one.tax_minor })).join(', '),
      },
    ),
    ...exact({ code: 'return-net', what: 'The net total', expected: net, found: found.net_minor }),
    ...exact({ code: 'return-tax-total', what: 'The tax in all', expected: tax, found: found.tax_minor }),
    ...exact({ code: 'return-gross', what: 'The total with tax', expected: net + tax, found: found.gross_minor }),
  ];
}

function expectedCharges(asked: CheckedReturn): readonly ChargeFigures[] {
  const { terms, waiver } = asked;
  const lines = asked.facts.flatMap((fact) => chargeOf(fact, asked));
  const hire = total(lines.filter(({ kind }) => kind.endsWith(' hire')).map(({ net_minor }) => net_minor));
  const waived = waiver === 'taken' ? roundHalfAway(hire * terms.waiver.percent, 100) : 0;
  return [
    ...lines,
    ...signed({
      kind: 'waiver',
      about: 'waiver',
      unit: Math.abs(waived),
      count: Math.sign(waived),
      tax: terms.taxOf.waiver,
    }),
  ];
}

function chargeOf(fact: CheckedFact, { terms, rates, waiver }: CheckedReturn): readonly ChargeFigures[] {
  const { about } = fact;
  const { taxOf } = terms;
  switch (fact.kind) {
    case 'hire': {
      const more = fact.charged_minor - fact.quoted_minor;
      const kind = more > 0 ? 'more hire' : 'less hire';
      return signed({ kind, about, unit: Math.abs(more), count: Math.sign(more), tax: taxOf.hire });
    }
    case 'cleaning': {
      const unit = rates.cleaning_minor[fact.soil];
      return signed({ kind: 'cleaning', about, unit: unit ?? 0, count: unit === 0 ? 0 : 1, tax: taxOf.labour });
    }
    case 'repair': {
      const minutes = Math.round(fact.hours * 100) * (rates.workshop_minor_per_hour ?? 0);
      const cost = roundHalfAway(minutes, 100) + fact.parts_minor;
      const unit = isCovered(fact.cause.kind, waiver) ? 0 : Math.min(cost, fact.replacement_minor);
      return signed({ kind: 'repair', about, unit, count: 1, tax: taxOf.labour });
    }
    case 'loss': {
      const unit = isCovered(fact.cause.kind, waiver) ? 0 : fact.replacement_minor;
      return signed({ kind: 'loss', about, unit, count: fact.count, tax: taxOf.sale });
    }
    case 'sold': {
      const beyond = fact.used - fact.quoted;
      const unit =
        beyond > 0 ? fact.price_minor : roundHalfAway(fact.price_minor * terms.unusedReturnCreditPercent, 100);
      const kind = beyond > 0 ? 'consumed' : 'unused';
      return signed({ kind, about, unit, count: unit === 0 ? 0 : beyond, tax: taxOf.sale });
    }
    case 'found': {
      const unit = fact.charged_minor;
      const less = Math.min(unit, fact.hire_minor);
      return [
        ...signed({ kind: 'found', about, unit, count: unit === 0 ? 0 : -1, tax: taxOf.sale }),
        ...signed({ kind: 'until found', about, unit: less, count: less === 0 ? 0 : 1, tax: taxOf.hire }),
      ];
    }
  }
}

function isCovered(cause: string, waiver: CheckedReturn['waiver']): boolean {
  return waiver === 'taken' && cause === 'covered';
}

interface Signed {
  readonly kind: string;
  readonly about: string;
  readonly unit: number;
  /** Nought where there is no line, below nought where it is given back. */
  readonly count: number;
  readonly tax: string;
}

function signed({ unit, count, ...line }: Signed): readonly ChargeFigures[] {
  return count === 0 ? [] : [{ ...line, quantity: count, unit_minor: unit, net_minor: unit * count }];
}

function checkCharge(line: ChargeFigures, right: ChargeFigures): readonly Discrepancy[] {
  const name = `${line.kind} of ${line.about}`;
  return [
    ...exact({
      code: 'return-quantity',
      what: `The quantity of ${name}`,
      expected: right.quantity,
      found: line.quantity,
    }),
    ...exact({ code: 'return-unit', what: `One of ${name}`, expected: right.unit_minor, found: line.unit_minor }),
    ...exact({ code: 'return-line', what: `What ${name} costs`, expected: right.net_minor, found: line.net_minor }),
    ...holds(line.tax === right.tax, {
      code: 'return-tax-category',
      sentence: `${name} is taxed as ${line.tax}; the terms say ${right.tax}.`,
      expected: right.tax,
      found: line.tax,
    }),
  ];
}

/** EN 16931, BR-27: a price of one is never below nought; the quantity carries the sign. */
function checkWhole(line: ChargeFigures): readonly Discrepancy[] {
  const isSound =
    Number.isSafeInteger(line.net_minor) &&
    Number.isSafeInteger(line.unit_minor) &&
    line.unit_minor >= 0 &&
    line.net_minor === line.quantity * line.unit_minor;
  return holds(isSound, {
    code: 'return-amount',
    sentence: `${line.kind} of ${line.about} is not its quantity times a whole price at or above nought.`,
    expected: line.quantity * line.unit_minor,
    found: line.net_minor,
  });
}

function told(one: {
  readonly code: string;
  readonly percent: number;
  readonly taxable: number;
  readonly tax: number;
}): string {
  return `${one.code} ${one.percent} % of ${one.taxable}: ${one.tax}`;
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function exact(at: {
  readonly code: string;
  readonly what: string;
  readonly expected: number;
  readonly found: number;
}): readonly Discrepancy[] {
  const { code, what, expected, found } = at;
  return holds(expected === found, {
    code,
    sentence: `${what} comes out at ${expected}, not ${found}.`,
    expected,
    found,
  });
}
