/*
 * What leaves the depot as a UBL 2.1 DespatchAdvice: one line a model and case, serial numbers, each case as a handling unit with its mass.
 * Invariant: pieces, serial numbers and masses are those of the packing list; dangerous goods are marked case by case.
 * Not here: packing (packing), the packing list on paper (../papers/packing-paper.ts).
 * Read next: ubl-parts.ts, ../papers/packing-paper.ts.
 */

import type { PackingInput } from '#lib/documents/papers/packing-paper.ts';
import type { CaseInput } from '#lib/documents/papers/paper-inputs.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { addressLines, customer, house, PIECE, plain, type UblNode, ublXml } from './ubl-parts.ts';

export interface DespatchInput extends PackingInput {
  /** The customer's order number, or the quote's where none was given. */
  readonly orderNumber: string;
}

/** Gross mass of a unit in UN/EDIFACT code list 6313, from memory. */
const GROSS_MASS = 'AAB';

/** Kilograms in the code list of UN/ECE Recommendation 20. */
const KILOGRAMS = 'KGM';

export function despatchXml(input: DespatchInput): string {
  const { context, cases, bookingNumber } = input;
  const lines = cases.flatMap((one) => one.contents.map((content) => ({ one, content })));
  invariant(lines.length > 0, 'A despatch advice names at least one piece.');
  const order = { 'cbc:ID': plain(input.orderNumber) };
  return ublXml({
    root: 'DespatchAdvice',
    children: {
      'cbc:UBLVersionID': '2.1',
      'cbc:ID': plain(bookingNumber),
      'cbc:IssueDate': context.issuedOn,
      'cbc:Note': [...(input.loadSentence === undefined ? [] : [input.loadSentence]), ...(input.lacking ?? [])].map(
        plain,
      ),
      'cbc:LineCountNumeric': lines.length,
      'cac:OrderReference': order,
      'cac:DespatchSupplierParty': { 'cac:Party': house(context.house) },
      'cac:DeliveryCustomerParty': { 'cac:Party': customer(context.customer) },
      'cac:Shipment': shipment(input),
      'cac:DespatchLine': lines.map(({ one, content }, index) => ({
        'cbc:ID': String(index + 1),
        'cbc:Note': plain(`Case ${one.number}, crew ${one.crew}.`),
        'cbc:DeliveredQuantity': { '@unitCode': PIECE, '#text': String(content.count) },
        'cac:OrderLineReference': { 'cbc:LineID': String(index + 1), 'cac:OrderReference': order },
        'cac:Item': item(content),
      })),
    },
  });
}

function item({ name, number, serials }: CaseInput['contents'][number]): UblNode {
  return {
    'cbc:Name': plain(name),
    'cac:SellersItemIdentification': { 'cbc:ID': plain(number) },
    ...(serials.length === 0
      ? {}
      : { 'cac:ItemInstance': serials.map((serial) => ({ 'cbc:SerialID': plain(serial) })) }),
  };
}

function shipment({ context, cases, depot, transport, bookingNumber }: DespatchInput): UblNode {
  const mass = cases.reduce((sum, one) => sum + one.mass_kg, 0);
  return {
    'cbc:ID': plain(bookingNumber),
    'cbc:HandlingInstructions': `Goes by ${transport}, from ${plain(depot)}. Lift as marked; petrol machines travel drained.`,
    'cbc:GrossWeightMeasure': weight(mass),
    'cbc:TotalTransportHandlingUnitQuantity': { '@unitCode': PIECE, '#text': String(cases.length) },
    'cac:Delivery': {
      'cac:DeliveryLocation': {
        'cbc:Description': plain(context.site.name),
        ...(context.site.address === undefined || context.site.address.length === 0
          ? {}
          : { 'cac:Address': addressLines(context.site.address) }),
      },
      'cac:RequestedDeliveryPeriod': { 'cbc:StartDate': context.site.window.starts_on },
    },
    'cac:TransportHandlingUnit': cases.map(handlingUnit),
  };
}

function handlingUnit({ number, lift, mass_kg, dangerousGoods, contents }: CaseInput): UblNode {
  return {
    'cbc:ID': plain(number),
    'cbc:HandlingInstructions': plain([`Lift: ${lift}.`, ...dangerousGoods].join(' ')),
    'cbc:HazardousRiskIndicator': dangerousGoods.length > 0,
    'cbc:TotalGoodsItemQuantity': {
      '@unitCode': PIECE,
      '#text': String(contents.reduce((sum, { count }) => sum + count, 0)),
    },
    'cac:MeasurementDimension': { 'cbc:AttributeID': GROSS_MASS, 'cbc:Measure': weight(mass_kg) },
  };
}

function weight(mass_kg: number): UblNode {
  return { '@unitCode': KILOGRAMS, '#text': mass_kg.toFixed(1) };
}
