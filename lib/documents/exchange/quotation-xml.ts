/*
 * The quote as a UBL 2.1 Quotation: parties, dates, terms, priced lines, discount as an allowance, tax by category, totals.
 * Invariant: the totals obey EN 16931 (BR-CO-10, 13, 14, 15, 17); every priced line is a quotation line or an allowance.
 * Not here: working the price out (pricing) and the paper (../papers/quote-paper.ts).
 * Read next: ubl-parts.ts.
 */

import type { PaperContext } from '#lib/documents/papers/paper-inputs.ts';
import { addDays } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { addressLines, amount, customer, house, PIECE, plain, taxCategory, type UblNode, ublXml } from './ubl-parts.ts';

export interface QuotationLineInput {
  /** `goods and services` that are priced, or a discount on them, whose amount is below nought. */
  readonly kind: 'charge' | 'discount';
  /** Model number; empty where the line is not a model. */
  readonly number: string;
  readonly name: string;
  /** How the amount came about. */
  readonly sentence: string;
  readonly quantity: number;
  /** What the quantity counts; pieces where it is absent. */
  readonly unit?: string;
  readonly unit_minor: number;
  readonly net_minor: number;
  readonly taxCategory: string;
}

export interface QuotationTaxInput {
  readonly code: string;
  readonly percent: number;
  /** Why no tax is charged. */
  readonly reason?: string;
  readonly taxable_minor: number;
  readonly tax_minor: number;
}

export interface QuotationInput {
  readonly context: PaperContext;
  readonly validUntil: string;
  readonly currency: string;
  readonly lines: readonly QuotationLineInput[];
  readonly taxes: readonly QuotationTaxInput[];
  readonly net_minor: number;
  readonly tax_minor: number;
  readonly gross_minor: number;
  /** Whole sentences on deposit, account and order number. */
  readonly payment?: readonly string[];
  /** Whole sentences: scope, what the price rests on, cautions. */
  readonly notes: readonly string[];
  readonly terms: readonly string[];
}

/** Codes of UN/ECE Recommendation 20; from memory of the list. */
const UNIT_CODES: Readonly<Record<string, string>> = {
  piece: PIECE,
  set: 'SET',
  hour: 'HUR',
  day: 'DAY',
  person: 'IE',
  kilometre: 'KMT',
  kilogram: 'KGM',
  litre: 'LTR',
  metre: 'MTR',
  'lump sum': 'LS',
};

function unitCode(unit: string): string {
  const code = UNIT_CODES[unit];
  invariant(code !== undefined, `The unit ${unit} has no code of UN/ECE Recommendation 20 here.`);
  return code;
}

export function quotationXml(input: QuotationInput): string {
  const { context, currency } = input;
  const charges = input.lines.filter(({ kind }) => kind === 'charge');
  const discounts = input.lines.filter(({ kind }) => kind === 'discount');
  invariant(charges.length > 0, 'A quotation has at least one priced line.');
  return ublXml({
    root: 'Quotation',
    children: {
      'cbc:UBLVersionID': '2.1',
      'cbc:ID': plain(context.number),
      'cbc:IssueDate': context.issuedOn,
      'cbc:Note': input.notes.map(plain),
      'cbc:PricingCurrencyCode': currency,
      'cbc:LineCountNumeric': charges.length,
      'cac:ValidityPeriod': { 'cbc:StartDate': context.issuedOn, 'cbc:EndDate': input.validUntil },
      'cac:SellerSupplierParty': { 'cac:Party': house(context.house) },
      'cac:BuyerCustomerParty': { 'cac:Party': customer(context.customer) },
      'cac:Delivery': delivery(context),
      'cac:TransactionConditions': { 'cbc:Description': [...(input.payment ?? []), ...input.terms].map(plain) },
      ...(discounts.length === 0 ? {} : { 'cac:AllowanceCharge': discounts.map((line) => allowance({ line, input })) }),
      'cac:TaxTotal': taxTotal(input),
      'cac:QuotedMonetaryTotal': monetaryTotal({ input, charges, discounts }),
      'cac:QuotationLine': charges.map((line, index) => quotationLine({ line, id: String(index + 1), input })),
    },
  });
}

function delivery({ site }: PaperContext): UblNode {
  return {
    'cac:DeliveryLocation': {
      'cbc:Description': plain(site.name),
      ...(site.address === undefined || site.address.length === 0 ? {} : { 'cac:Address': addressLines(site.address) }),
    },
    'cac:RequestedDeliveryPeriod': {
      'cbc:StartDate': site.window.starts_on,
      'cbc:EndDate': addDays(site.window.ends_before, -1),
      'cbc:Description': 'Days of hire, the first and the last included.',
    },
  };
}

interface LineGiven {
  readonly line: QuotationLineInput;
  readonly input: QuotationInput;
}

function allowance({ line, input }: LineGiven): UblNode {
  return {
    'cbc:ChargeIndicator': false,
    'cbc:AllowanceChargeReason': plain(`${line.name}. ${line.sentence}`),
    'cbc:Amount': amount(-line.net_minor, input.currency),
    'cac:TaxCategory': categoryOf({ line, input }),
  };
}

function categoryOf({ line, input }: LineGiven): UblNode {
  const tax = input.taxes.find(({ code }) => code === line.taxCategory);
  invariant(tax !== undefined, `The tax category ${line.taxCategory} of ${line.name} is not among the taxes.`);
  return taxCategory(tax);
}

function taxTotal({ taxes, tax_minor, currency }: QuotationInput): UblNode {
  return {
    'cbc:TaxAmount': amount(tax_minor, currency),
    'cac:TaxSubtotal': taxes.map((tax) => ({
      'cbc:TaxableAmount': amount(tax.taxable_minor, currency),
      'cbc:TaxAmount': amount(tax.tax_minor, currency),
      'cac:TaxCategory': taxCategory(tax),
    })),
  };
}

function monetaryTotal({
  input,
  charges,
  discounts,
}: {
  readonly input: QuotationInput;
  readonly charges: readonly QuotationLineInput[];
  readonly discounts: readonly QuotationLineInput[];
}): UblNode {
  const { currency, net_minor, gross_minor } = input;
  const sum = (lines: readonly QuotationLineInput[]) => lines.reduce((total, line) => total + line.net_minor, 0);
  invariant(sum(charges) + sum(discounts) === net_minor, 'The net total of a quotation is the sum of its lines.');
  return {
    'cbc:LineExtensionAmount': amount(sum(charges), currency),
    'cbc:TaxExclusiveAmount': amount(net_minor, currency),
    'cbc:TaxInclusiveAmount': amount(gross_minor, currency),
    ...(discounts.length === 0 ? {} : { 'cbc:AllowanceTotalAmount': amount(-sum(discounts), currency) }),
    // Nothing is paid yet (EN 16931, BT-113), so all of it is payable (BT-115); a deposit is a condition, told as one.
    'cbc:PayableAmount': amount(gross_minor, currency),
  };
}

function quotationLine({ line, id, input }: LineGiven & { readonly id: string }): UblNode {
  const { currency } = input;
  return {
    'cbc:ID': id,
    'cbc:Note': plain(line.sentence),
    'cac:LineItem': {
      'cbc:ID': id,
      'cbc:Quantity': {
        '@unitCode': unitCode(line.unit ?? 'piece'),
        '#text': String(line.quantity),
      },
      'cbc:LineExtensionAmount': amount(line.net_minor, currency),
      'cac:Price': { 'cbc:PriceAmount': amount(line.unit_minor, currency) },
      'cac:Item': {
        'cbc:Name': plain(line.name),
        ...(line.number === '' ? {} : { 'cac:SellersItemIdentification': { 'cbc:ID': plain(line.number) } }),
        'cac:ClassifiedTaxCategory': categoryOf({ line, input }),
      },
    },
  };
}
