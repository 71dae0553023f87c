import { describe, expect, it } from 'vitest';
import { despatchXml } from '#lib/documents/exchange/despatch-xml.ts';
import { SAMPLE_PACKING } from '#tests/support/papers/sample-plan.ts';
import { textsAt } from '#tests/support/papers/xml-schema.ts';

describe('the despatch advice', () => {
  const xml = despatchXml({ ...SAMPLE_PACKING, orderNumber: 'PO 1' });
  const contents = SAMPLE_PACKING.cases.flatMap((one) => one.contents);

  it('has a line for every model in every case, with its count and serial numbers', () => {
    expect(textsAt(xml, '/*/cac:DespatchLine/cbc:DeliveredQuantity').map(Number)).toEqual(
      contents.map(({ count }) => count),
    );
    expect(textsAt(xml, '//cbc:SerialID')).toEqual(contents.flatMap(({ serials }) => serials));
  });

  it('marks the cases that carry dangerous goods, and says which', () => {
    const units = '/*/cac:Shipment/cac:TransportHandlingUnit';
    expect(textsAt(xml, `${units}/cbc:HazardousRiskIndicator`)).toEqual(
      SAMPLE_PACKING.cases.map(({ dangerousGoods }) => String(dangerousGoods.length > 0)),
    );
    expect(textsAt(xml, `${units}/cbc:HandlingInstructions`)[0]).toContain('UN 3481');
  });
});
