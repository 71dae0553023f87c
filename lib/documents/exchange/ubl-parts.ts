/*
 * Parts that UBL 2.1 documents share: amounts, parties, addresses, tax categories, and writing the tree down as XML.
 * Invariant: elements come in the order in which they are given; characters that XML 1.0 does not allow are left out.
 * Not here: the documents themselves (quotation-xml.ts, despatch-xml.ts).
 * Read next: quotation-xml.ts.
 */
import XMLBuilder from 'fast-xml-builder';
import type { CustomerInput, HouseInput } from '#lib/documents/papers/paper-inputs.ts';
import { decimalText } from '#lib/money/currency.ts';

/** An element: text, attributes under `@…`, or children by name in the order of the schema. */
export type UblNode = string | number | boolean | { readonly [name: string]: UblNode | readonly UblNode[] };

const NAMESPACES = {
  '@xmlns:cac': 'urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2',
  '@xmlns:cbc': 'urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2',
} as const;

/** One piece in the code list of UN/ECE Recommendation 20. */
export const PIECE = 'C62';

const builder = new XMLBuilder({
  attributeNamePrefix: '@',
  ignoreAttributes: false,
  suppressBooleanAttributes: false,
  format: true,
  indentBy: '  ',
});

export function ublXml({ root, children }: { readonly root: string; readonly children: UblNode }): string {
  const document = {
    [root]: {
      '@xmlns': `urn:oasis:names:specification:ubl:schema:xsd:${root}-2`,
      ...NAMESPACES,
      ...(typeof children === 'object' ? children : {}),
    },
  };
  return `<?xml version="1.0" encoding="UTF-8"?>\n${builder.build(document)}`;
}

/** Text without what XML 1.0 forbids (control characters, lone surrogates), each left out. */
export function plain(text: string): string {
  return [...text].filter((character) => isAllowed(character.codePointAt(0) ?? 0)).join('');
}

/** XML 1.0, production 2 (Char). */
function isAllowed(code: number): boolean {
  return (
    code === 0x9 ||
    code === 0xa ||
    code === 0xd ||
    (code >= 0x20 && code <= 0xd7ff) ||
    (code >= 0xe000 && code <= 0xfffd) ||
    (code >= 0x10000 && code <= 0x10ffff)
  );
}

export function amount(minor: number, currency: string): UblNode {
  return { '@currencyID': currency, '#text': decimalText(minor, currency) };
}

export function house({ name, address, phone, email, taxNumber }: HouseInput): UblNode {
  return {
    'cac:PartyName': { 'cbc:Name': plain(name) },
    'cac:PostalAddress': addressLines(address),
    'cac:PartyLegalEntity': {
      'cbc:RegistrationName': plain(name),
      ...(taxNumber === undefined ? {} : { 'cbc:CompanyID': plain(taxNumber) }),
    },
    ...(phone === undefined && email === undefined
      ? {}
      : {
          'cac:Contact': {
            ...(phone === undefined ? {} : { 'cbc:Telephone': plain(phone) }),
            ...(email === undefined ? {} : { 'cbc:ElectronicMail': plain(email) }),
          },
        }),
  };
}

export function customer({ name, contact, address }: CustomerInput): UblNode {
  return {
    'cac:PartyName': { 'cbc:Name': plain(name) },
    ...(address.length === 0 ? {} : { 'cac:PostalAddress': addressLines(address) }),
    ...(contact === undefined ? {} : { 'cac:Contact': { 'cbc:Name': plain(contact) } }),
  };
}

export function addressLines(lines: readonly string[]): UblNode {
  return { 'cac:AddressLine': lines.map((line) => ({ 'cbc:Line': plain(line) })) };
}

export interface UblTaxCategory {
  /** Category code of UNTDID 5305. */
  readonly code: string;
  readonly percent: number;
  readonly reason?: string;
}

export function taxCategory({ code, percent, reason }: UblTaxCategory): UblNode {
  return {
    'cbc:ID': code,
    ...(code === 'O' ? {} : { 'cbc:Percent': String(percent) }),
    ...(reason === undefined ? {} : { 'cbc:TaxExemptionReason': plain(reason) }),
    'cac:TaxScheme': { 'cbc:ID': 'VAT' },
  };
}
