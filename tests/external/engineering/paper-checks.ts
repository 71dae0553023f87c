import { despatchXml } from '#lib/documents/exchange/despatch-xml.ts';
import { quotationXml } from '#lib/documents/exchange/quotation-xml.ts';
import type { RateCard } from '#lib/equipment/model.ts';
import { currencyDecimals } from '#lib/money/currency.ts';
import { roundMinor, toMinor } from '#lib/money/money.ts';
import { code128CheckValue, gs1CheckDigit, isGs1Number } from '#lib/packing/barcode.ts';
import { bestRate } from '#lib/pricing/best-rate.ts';
import { type TaxableLine, taxTotals } from '#lib/pricing/tax-totals.ts';
import { SAMPLE_PACKING } from '#tests/support/papers/sample-plan.ts';
import { charge, sampleQuotation } from '#tests/support/papers/sample-quotation.ts';
import { schemaComplaints } from '#tests/support/papers/xml-schema.ts';
import { type Check, type Checks, REFERENCE, type Value } from './entry.ts';
import { each, list, namesOf, number, numbers, text } from './given.ts';

/* Barcodes, quotation documents, tax totals and hire charges. */
const minor = (amount: number) => roundMinor(amount * 100);

const checkDigit: Check = {
  find: ({ inputs }) => {
    const body = text(inputs, 'body');
    const check = gs1CheckDigit(body);
    return { check: isGs1Number(`${body}${check}`) ? check : Number.NaN };
  },
};

const checkValue: Check = {
  find: ({ inputs }) => ({
    check: code128CheckValue({ start: number(inputs, 'start'), values: numbers(inputs, 'values') }),
  }),
};

/** Totals of taxable amounts with their percentages, in the currency's main unit. */
function totalsOf(amounts: readonly (readonly [taxable: number, percent: number])[]) {
  const categories = amounts.map(([, percent], index) => ({ code: `T${index}`, name: `${percent} %`, percent }));
  const lines = amounts.map(([taxable], index): TaxableLine => ({ net_minor: minor(taxable), tax: `T${index}` }));
  const totals = taxTotals({ lines, categories });
  return {
    vat: totals.taxes.map(({ tax_minor }) => tax_minor / 100),
    net: totals.net_minor / 100,
    vat_total: totals.tax_minor / 100,
    gross: totals.gross_minor / 100,
  };
}

function pairs(inputs: Value, name: string): readonly (readonly [number, number])[] {
  return list(inputs, name).map((one) => {
    const [first = Number.NaN, second = Number.NaN] = numbers(one);
    return [first, second] as const;
  });
}

const taxes: Check = {
  besides: { due: 'what is due after a payment: nothing is paid on a quote' },
  find: ({ inputs, shape }) => {
    const totals = totalsOf(pairs(inputs, 'cats'));
    const figures: Readonly<Record<string, Value>> = { ...totals, ex_vat: totals.net };
    return Object.fromEntries(namesOf(shape).flatMap((name) => (name in figures ? [[name, figures[name]]] : [])));
  },
};

function card(rates: readonly number[]): RateCard {
  const [day = Number.NaN, week = Number.NaN, fourWeeks = Number.NaN] = rates;
  return { day_minor: toMinor(day), week_minor: toMinor(week), four_weeks_minor: toMinor(fourWeeks), minimum_days: 1 };
}

const cheapest: Check = {
  find: ({ inputs }) => ({
    charge: bestRate({ rates: card(numbers(inputs, 'rates')), days: number(inputs, 'days') }).total_minor,
  }),
};

/** A further weekday costs a fifth of the week; four weeks no less than four single ones. */
const weekdays: Check = {
  find: ({ inputs }) => {
    const week = number(inputs, 'week_rate');
    const rates = card([week / 5, week, 4 * week]);
    return { charge: bestRate({ rates, days: number(inputs, 'weekdays'), daysPerWeek: 5 }).total_minor };
  },
};

const quotation = () =>
  quotationXml(
    sampleQuotation({
      lines: [charge({ net_minor: 90_000 }), charge({ net_minor: 7_500, number: '', unit: 'hour' })],
      categories: [{ code: 'S', name: 'Standard', percent: 23 }],
    }),
  );

/** The elements of a document of ours without which the published schema refuses it, in their order. */
function indispensable(xml: string, document: 'Quotation' | 'DespatchAdvice'): readonly string[] {
  const schema = `${REFERENCE}/ubl-2.1/xsd/maindoc/UBL-${document}-2.1.xsd`;
  if (schemaComplaints({ xml, schema }).length > 0) return [];
  const elements = [...xml.matchAll(/^ {2}<(c[ab]c:\w+)/gm)].map(([, name = '']) => name);
  return [...new Set(elements)]
    .filter((name) => {
      const without = xml.replace(new RegExp(`^ {2}<${name}\\b[\\s\\S]*?</${name}>\\n`, 'gm'), '');
      return without !== xml && schemaComplaints({ xml: without, schema }).length > 0;
    })
    .map((name) => name.replace(/^c[ab]c:/, ''));
}

function numbered(prefix: string, ids: readonly (number | string)[], check: Check): Checks {
  return Object.fromEntries(ids.map((one) => [`${prefix}${one}`, check]));
}

const NOT_COUNTED = 'a quotation counts pieces and hours; how long a hire lasts stands in its sentence';

export const PAPER_CHECKS: Checks = {
  ...numbered('GS1-', ['01', '02', '03', '04', '05', '06', '07', '08', '09', '10'], checkDigit),
  'GS1-BAD': { find: ({ inputs }) => ({ valid: isGs1Number(text(inputs, 'number')) }) },
  ...numbered('C128-', [1, 2, 3, 4, 5, 6], checkValue),
  'UBL-QUO': { find: () => ({ mandatory: indispensable(quotation(), 'Quotation') }) },
  'UBL-DES': {
    find: () => ({
      mandatory: indispensable(despatchXml({ ...SAMPLE_PACKING, orderNumber: 'PO 1' }), 'DespatchAdvice'),
    }),
  },
  UNECE20: {
    besides: {
      day: NOT_COUNTED,
      week: NOT_COUNTED,
      month: NOT_COUNTED,
      kg: NOT_COUNTED,
      each: 'ours is C62, one, which the entry names as its equal',
    },
    find: () => {
      const codes = [...quotation().matchAll(/<cbc:Quantity unitCode="(\w+)">/g)].map(([, code = '']) => code);
      return { hour: codes.at(-1) ?? null };
    },
  },
  'UBL-QUO-EX': {
    find: ({ inputs }) => {
      const amounts = pairs(inputs, 'lines').map(([quantity, price]) => quantity * price);
      const categories = [{ code: 'S', name: 'Standard', percent: number(inputs, 'vat_pct') }];
      const lines = amounts.map((amount): TaxableLine => ({ net_minor: minor(amount), tax: 'S' }));
      const totals = taxTotals({ lines, categories });
      return {
        lines: amounts,
        net: totals.net_minor / 100,
        tax: totals.tax_minor / 100,
        gross: totals.gross_minor / 100,
      };
    },
  },
  ...numbered('EN16931-EX', [1, 3, 4], { find: taxes.find }),
  'EN16931-EX2': taxes,
  ISO4217: { find: ({ shape }) => each(shape, (currency) => currencyDecimals(currency)) },
  ...numbered('HIRE-MIN-', [9, 21, 1, 3, 4, 8, 14, 28, 29], cheapest),
  ...numbered('HIRE-5D-', [6, 7, 8, 9], weekdays),
  'HIRE-7TH': {
    find: ({ inputs }) => {
      const week = number(inputs, 'week');
      return {
        charge: bestRate({ rates: card([week / 7, week, 4 * week]), days: number(inputs, 'days') }).total_minor,
      };
    },
  },
};
