/*
 * The files that go with an issued quote beside its papers: UBL quotation, its lines as CSV and as a workbook, words for a mail.
 * Invariant: made of the same frozen facts as the papers, and kept with their hash like them.
 * Not here: the papers (papers-of.ts).
 * Read next: ../documents/quotation-xml.ts, ../documents/lines-table.ts.
 */
import Papa from 'papaparse';
import writeExcelFile from 'write-excel-file/node';
import { gatherAssumptions } from '#lib/documents/assumptions.ts';
import { linesTable } from '#lib/documents/lines-table.ts';
import { mailText } from '#lib/documents/mail-text.ts';
import { quotationXml } from '#lib/documents/quotation-xml.ts';
import { GENERAL_CAUTIONS } from '#lib/documents/safety-words.ts';
import { paperLines } from './paper-lines.ts';
import { type PapersInput, paperContext, planSentence, unservedLines, validUntil } from './papers-of.ts';

/** How files beside the papers are sent. */
export const FILE_FORMS = {
  'quotation-xml': { extension: 'xml', mime: 'application/xml' },
  'lines-csv': { extension: 'csv', mime: 'text/csv; charset=utf-8' },
  'lines-xlsx': { extension: 'xlsx', mime: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet' },
  'mail-text': { extension: 'txt', mime: 'text/plain; charset=utf-8' },
  'despatch-xml': { extension: 'xml', mime: 'application/xml' },
} as const;
type FileKind = keyof typeof FILE_FORMS;

/** Those that go with every quote; the despatch advice comes with a booking. */
export const QUOTE_FILE_KINDS = ['quotation-xml', 'lines-csv', 'lines-xlsx', 'mail-text'] as const;
export type QuoteFileKind = (typeof QUOTE_FILE_KINDS)[number];

export function isFileKind(kind: string): kind is FileKind {
  return kind in FILE_FORMS;
}

export async function drawQuoteFile(kind: QuoteFileKind, input: PapersInput): Promise<Buffer> {
  switch (kind) {
    case 'quotation-xml':
      return Buffer.from(quotationOf(input), 'utf8');
    case 'lines-csv':
      return Buffer.from(csvOf(input), 'utf8');
    case 'lines-xlsx':
      return workbookOf(input);
    case 'mail-text':
      return Buffer.from(mailOf(input), 'utf8');
  }
}

function quotationOf(input: PapersInput): string {
  const { price, house } = input;
  return quotationXml({
    context: paperContext(input),
    validUntil: validUntil(input),
    currency: price.currency,
    lines: price.lines.map((line) => ({
      kind: line.kind === 'discount' ? 'discount' : 'charge',
      number: line.number,
      name: line.name,
      sentence: line.sentence,
      quantity: line.quantity,
      counted: line.kind === 'labour' ? 'hours' : 'pieces',
      unit_minor: line.unit_minor,
      net_minor: line.net_minor,
      taxCategory: line.tax,
    })),
    taxes: price.taxes,
    net_minor: price.net_minor,
    tax_minor: price.tax_minor,
    gross_minor: price.gross_minor,
    notes: [planSentence(input), ...price.notes, ...GENERAL_CAUTIONS],
    terms: house.terms.text,
  });
}

function tableOf(input: PapersInput) {
  return linesTable({ lines: paperLines(input), unserved: unservedLines(input) });
}

/** With the mark of the encoding, which spreadsheets need; a cell that would be read as a formula is held as text. */
function csvOf(input: PapersInput): string {
  const { headings, rows } = tableOf(input);
  const body = Papa.unparse({ fields: [...headings], data: rows.map((row) => [...row]) }, { escapeFormulae: true });
  return `\ufeff${body}\r\n`;
}

async function workbookOf(input: PapersInput): Promise<Buffer> {
  const { headings, rows } = tableOf(input);
  const head = headings.map((value) => ({ value, fontWeight: 'bold' as const, wrap: true }));
  const body = rows.map((row) => row.map((value) => (value === null ? null : { value })));
  return writeExcelFile([head, ...body], {
    sheet: 'Lines',
    stickyRowsCount: 1,
    columns: headings.map((heading) => ({ width: Math.min(40, Math.max(12, heading.length)) })),
  }).toBuffer();
}

function mailOf(input: PapersInput): string {
  const { price, lines } = input;
  const context = paperContext(input);
  const parts = paperLines(input);
  return mailText({
    context,
    validUntil: validUntil(input),
    currency: price.currency,
    gross_minor: price.gross_minor,
    deposit_minor: price.deposit_minor,
    valves: lines.reduce((sum, { qty }) => sum + qty, 0),
    unserved: parts.filter(({ assembly }) => assembly === null).reduce((sum, { line }) => sum + line.qty, 0),
    assumed: gatherAssumptions(parts, context.system).length,
  });
}
