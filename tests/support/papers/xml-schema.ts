/** Reads XML and judges it by the OASIS schemas, with libxml2. */
import { readFileSync } from 'node:fs';
import { XmlDocument, XmlElement, XsdValidator } from 'libxml2-wasm';
import { xmlRegisterFsInputProviders } from 'libxml2-wasm/lib/nodejs.mjs';

// Lets a schema import its common modules from the disk.
xmlRegisterFsInputProviders();

/** What the schema has against the document; empty when it is valid. */
export function schemaComplaints({
  xml,
  schema,
}: {
  readonly xml: string;
  readonly schema: string;
}): readonly string[] {
  const schemaDocument = XmlDocument.fromBuffer(readFileSync(schema), { url: schema });
  const document = XmlDocument.fromString(xml);
  const validator = XsdValidator.fromDoc(schemaDocument);
  try {
    validator.validate(document);
    return [];
  } catch (error) {
    return [error instanceof Error ? error.message : String(error)];
  } finally {
    validator.dispose();
    schemaDocument.dispose();
    document.dispose();
  }
}

const PREFIXES = {
  cac: 'urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2',
  cbc: 'urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2',
};

/** Texts of all elements that an XPath names. */
export function textsAt(xml: string, path: string): readonly string[] {
  const document = XmlDocument.fromString(xml);
  try {
    return document.find(path, PREFIXES).map((node) => (node instanceof XmlElement ? node.content : ''));
  } finally {
    document.dispose();
  }
}
