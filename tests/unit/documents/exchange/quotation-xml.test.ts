import { describe, expect, it } from 'vitest';
import { quotationXml } from '#lib/documents/exchange/quotation-xml.ts';
import { charge, sampleQuotation } from '#tests/support/papers/sample-quotation.ts';
import { textsAt } from '#tests/support/papers/xml-schema.ts';

const STANDARD = { code: 'S', name: 'Standard rate', percent: 25 };

function at(xml: string, path: string): readonly string[] {
  return textsAt(xml, `/*/${path}`);
}

/* OASIS UBL-Quotation-2.1-Example: 35 × 4300, 35 × 1250, 35 × 50, 35 × 50 DKK, 25 % tax. Its file puts the tax in TaxExclusiveAmount, a known slip that is not copied. */
describe('the amounts of the published UBL 2.1 example quotation', () => {
  const lines = [4300, 1250, 50, 50].map((price) =>
    charge({ quantity: 35, unit_minor: price * 100, net_minor: price * 3500 }),
  );
  const xml = quotationXml(sampleQuotation({ lines, categories: [STANDARD], currency: 'DKK' }));

  it('come out line by line and in the totals', () => {
    expect(at(xml, 'cac:QuotationLine/cac:LineItem/cbc:LineExtensionAmount')).toEqual([
      '150500.00',
      '43750.00',
      '1750.00',
      '1750.00',
    ]);
    expect(at(xml, 'cac:QuotedMonetaryTotal/cbc:TaxExclusiveAmount')).toEqual(['197750.00']);
    expect(at(xml, 'cac:TaxTotal/cbc:TaxAmount')).toEqual(['49437.50']);
    expect(at(xml, 'cac:QuotedMonetaryTotal/cbc:PayableAmount')).toEqual(['247187.50']);
  });
});

describe('a discount', () => {
  const lines = [
    charge({ net_minor: 10_000 }),
    charge({ kind: 'discount', number: '', name: 'Discount on hire', net_minor: -1_500 }),
  ];
  const xml = quotationXml(sampleQuotation({ lines, categories: [STANDARD] }));

  it('is an allowance of the document, and no price is below nought (EN 16931, BR-27)', () => {
    expect(at(xml, 'cac:AllowanceCharge/cbc:ChargeIndicator')).toEqual(['false']);
    expect(at(xml, 'cac:AllowanceCharge/cbc:Amount')).toEqual(['15.00']);
    expect(at(xml, 'cac:QuotationLine')).toHaveLength(1);
  });

  it('is taken off once: lines less allowances are the net total (BR-CO-13)', () => {
    expect(at(xml, 'cac:QuotedMonetaryTotal/cbc:LineExtensionAmount')).toEqual(['100.00']);
    expect(at(xml, 'cac:QuotedMonetaryTotal/cbc:AllowanceTotalAmount')).toEqual(['15.00']);
    expect(at(xml, 'cac:QuotedMonetaryTotal/cbc:TaxExclusiveAmount')).toEqual(['85.00']);
    expect(at(xml, 'cac:TaxTotal/cac:TaxSubtotal/cbc:TaxableAmount')).toEqual(['85.00']);
  });
});

describe('what a quotation says beside amounts', () => {
  it('keeps names as they are written and leaves out what XML does not allow', () => {
    const lines = [charge({ net_minor: 100, name: 'Key <long> & “old”\u0000\u000b' })];
    const xml = quotationXml(sampleQuotation({ lines, categories: [STANDARD] }));
    expect(at(xml, 'cac:QuotationLine/cac:LineItem/cac:Item/cbc:Name')).toEqual(['Key <long> & “old”']);
    expect(at(xml, 'cac:BuyerCustomerParty/cac:Party/cac:PartyName/cbc:Name')[0]).toContain('Łódź');
  });

  it('names the days of hire with the last one included', () => {
    const xml = quotationXml(sampleQuotation({ lines: [charge({ net_minor: 100 })], categories: [STANDARD] }));
    expect(at(xml, 'cac:Delivery/cac:RequestedDeliveryPeriod/cbc:StartDate')).toEqual(['2031-03-17']);
    expect(at(xml, 'cac:Delivery/cac:RequestedDeliveryPeriod/cbc:EndDate')).toEqual(['2031-03-21']);
  });

  it('prints the decimals of the currency', () => {
    const yen = quotationXml(
      sampleQuotation({ lines: [charge({ net_minor: 1234 })], categories: [STANDARD], currency: 'JPY' }),
    );
    expect(at(yen, 'cac:QuotedMonetaryTotal/cbc:TaxExclusiveAmount')).toEqual(['1234']);
  });

  it('gives the reason where no tax is charged, and no rate outside the scope of tax', () => {
    const outside = { code: 'O', name: 'Outside scope', percent: 0, reason: 'Supplied outside the area of the tax' };
    const lines = [charge({ net_minor: 100, taxCategory: 'O' })];
    const xml = quotationXml(sampleQuotation({ lines, categories: [outside] }));
    const category = 'cac:TaxTotal/cac:TaxSubtotal/cac:TaxCategory';
    expect(at(xml, `${category}/cbc:TaxExemptionReason`)).toEqual([outside.reason]);
    expect(at(xml, `${category}/cbc:Percent`)).toEqual([]);
  });
});
