import { describe, expect, it } from 'vitest';
import { despatchXml } from '#lib/documents/exchange/despatch-xml.ts';
import { quotationXml } from '#lib/documents/exchange/quotation-xml.ts';
import { deliveryCases } from '#lib/services/yard/out/delivery-cases.ts';
import { SAMPLE_CONTEXT, SAMPLE_PACKING } from '#tests/support/papers/sample-plan.ts';
import { charge, sampleQuotation } from '#tests/support/papers/sample-quotation.ts';
import { schemaComplaints } from '#tests/support/papers/xml-schema.ts';

const REFERENCE = process.env.KITWRIGHT_REFERENCE ?? new URL('../../../shared/reference', import.meta.url).pathname;
const QUOTATION = `${REFERENCE}/ubl-2.1/xsd/maindoc/UBL-Quotation-2.1.xsd`;

const DESPATCH = `${REFERENCE}/ubl-2.1/xsd/maindoc/UBL-DespatchAdvice-2.1.xsd`;

const CATEGORIES = [
  { code: 'S', name: 'Standard rate', percent: 23 },
  { code: 'E', name: 'Exempt', percent: 0, reason: 'Insurance-like cover' },
];

/** OASIS UBL 2.1, schemas of the standard of 4 November 2013. */
describe('the quotation as XML', () => {
  const full = sampleQuotation({
    lines: [
      charge({ net_minor: 90_000, quantity: 3, unit_minor: 30_000 }),
      charge({ kind: 'discount', number: '', name: 'Discount on hire', net_minor: -9_000 }),
      charge({ net_minor: 8_100, number: '', name: 'Damage waiver', taxCategory: 'E' }),
      charge({
        net_minor: 33_750,
        number: '',
        name: 'Our operators',
        quantity: 4.5,
        unit: 'hour',
        unit_minor: 7_500,
      }),
    ],
    categories: CATEGORIES,
  });
  const bare = {
    ...sampleQuotation({ lines: [charge({ net_minor: 100 })], categories: CATEGORIES }),
    terms: [],
    notes: [],
  };
  const sparse = {
    ...bare,
    context: {
      ...bare.context,
      house: { name: 'A house', address: [] },
      customer: { name: 'A customer', address: [] },
    },
  };

  it.each([
    ['with discount, waiver, labour and two tax categories', full],
    ['without notes and terms', bare],
    ['of a house and a customer of whom only the name is known', sparse],
  ])('is valid %s', (_, input) => {
    expect(schemaComplaints({ xml: quotationXml(input), schema: QUOTATION })).toEqual([]);
  });

  it('would be refused with an element missing, misplaced or of the wrong kind', () => {
    const xml = quotationXml(full);
    const spoilt = [
      xml.replace(/<cbc:IssueDate>.*<\/cbc:IssueDate>/, ''),
      xml.replace(/(<cbc:ID>.*?<\/cbc:ID>)\s*(<cbc:IssueDate>.*<\/cbc:IssueDate>)/, '$2$1'),
      xml.replace('<cbc:IssueDate>2031-03-04', '<cbc:IssueDate>4 March 2031'),
      xml.replace(' currencyID="EUR"', ''),
    ];
    for (const one of spoilt) {
      expect(one).not.toBe(xml);
      expect(schemaComplaints({ xml: one, schema: QUOTATION })).toHaveLength(1);
    }
  });
});

describe('the despatch advice as XML', () => {
  const { loadSentence: _loadSentence, ...quiet } = SAMPLE_PACKING;

  it.each([
    [
      'with dangerous goods, serial numbers and something that is lacking',
      { ...SAMPLE_PACKING, lacking: ['No charger.'] },
    ],
    ['without a word about the load', quiet],
  ])('is valid %s', (_, input) => {
    const xml = despatchXml({ ...input, orderNumber: 'PO 77-4410/B' });
    expect(schemaComplaints({ xml, schema: DESPATCH })).toEqual([]);
  });

  it('is valid for a part delivery, with a case and with what goes loose', () => {
    const [unit] = SAMPLE_CONTEXT.models;
    if (!unit) throw new Error('The sample has no model.');
    const load = {
      booking: 'B-00012',
      models: SAMPLE_CONTEXT.models,
      units: ['X-01', 'X-02'].map((serial, index) => ({
        bookingUnitId: index,
        serial,
        model: unit.number,
        name: unit.name,
        caseLabel: index === 0 ? 'CASE:B-00012/1' : '',
        state: 'out',
      })),
      items: [],
      cases: [{ booking_id: 1, number: 1, name: 'case', crew: 1 }],
      pieces: [],
      transport: 'road' as const,
    };
    const cases = deliveryCases(load);
    expect(cases.map(({ number }) => number)).toEqual(['1', 'loose']);
    const xml = despatchXml({ ...SAMPLE_PACKING, bookingNumber: 'B-00012/2', cases, orderNumber: 'PO 1' });
    expect(schemaComplaints({ xml, schema: DESPATCH })).toEqual([]);
    expect([...xml.matchAll(/<cbc:SerialID>(.*?)</g)].map(([, serial]) => serial)).toEqual(['X-01', 'X-02']);
  });

  it('would be refused without the reference to an order line', () => {
    const xml = despatchXml({ ...SAMPLE_PACKING, orderNumber: 'PO 1' });
    const spoilt = xml.replace(/<cac:OrderLineReference>[\s\S]*?<\/cac:OrderLineReference>/, '');
    expect(spoilt).not.toBe(xml);
    expect(schemaComplaints({ xml: spoilt, schema: DESPATCH })).toHaveLength(1);
  });
});
