/*
 * The files that go with an issued quote beside its papers: UBL quotation (one an option), lines and prices as CSV and as a workbook, words for a mail.
 * Invariant: made of the same frozen facts as the papers, and kept with their hash like them.
 * Not here: the papers (papers-of.ts).
 * Read next: ../../documents/exchange/quotation-xml.ts, ../../documents/exchange/lines-table.ts.
 */
import Papa from 'papaparse';
import writeExcelFile from 'write-excel-file/node';
import { type LinesTable, linesTable, type TableCell } from '#lib/documents/exchange/lines-table.ts';
import { priceTable } from '#lib/documents/exchange/price-table.ts';
import { quotationXml } from '#lib/documents/exchange/quotation-xml.ts';
import { optionTitle } from '#lib/documents/papers/quote-option-input.ts';
import { gatherAssumptions } from '#lib/documents/words/assumptions.ts';
import { mailText } from '#lib/documents/words/mail-text.ts';
import { GENERAL_CAUTIONS } from '#lib/documents/words/safety-words.ts';
import { decimalMark } from '#lib/documents/words/written-forms.ts';
import { stillZip } from '#lib/services/still-zip.ts';
import { paperLines } from './paper-lines.ts';
import { writerFor } from './paper-names.ts';
import {
  optionInputs,
  type PapersInput,
  paperContext,
  planSentence,
  quoteOptions,
  unservedLines,
  validUntil,
} from './papers-of.ts';

/** How files beside the papers are sent. */
export const FILE_FORMS = {
  'quotation-xml': { extension: 'xml', mime: 'application/xml' },
  'lines-csv': { extension: 'csv', mime: 'text/csv; charset=utf-8' },
  'price-csv': { extension: 'csv', mime: 'text/csv; charset=utf-8' },
  'lines-xlsx': { extension: 'xlsx', mime: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet' },
  'mail-text': { extension: 'txt', mime: 'text/plain; charset=utf-8' },
  'despatch-xml': { extension: 'xml', mime: 'application/xml' },
} as const;
type FileKind = keyof typeof FILE_FORMS;

/** Those that go with every quote; the despatch advice comes with a booking. */
export const QUOTE_FILE_KINDS = ['quotation-xml', 'lines-csv', 'price-csv', 'lines-xlsx', 'mail-text'] as const;
export type QuoteFileKind = (typeof QUOTE_FILE_KINDS)[number];

/** Form of a kind of file, also of one for a further option; undefined for a paper. */
export function fileForm(kind: string): (typeof FILE_FORMS)[FileKind] | undefined {
  const base = kind.replace(/-option-\d+$/, '');
  return isFileKind(base) ? FILE_FORMS[base] : undefined;
}

function isFileKind(kind: string): kind is FileKind {
  return kind in FILE_FORMS;
}

export async function drawQuoteFile(kind: QuoteFileKind, input: PapersInput): Promise<Buffer> {
  switch (kind) {
    case 'quotation-xml':
      return Buffer.from(quotationOf(input), 'utf8');
    case 'lines-csv':
      return Buffer.from(csvOf(linesOf(input), input), 'utf8');
    case 'price-csv':
      return Buffer.from(csvOf(pricesOf(input), input), 'utf8');
    case 'lines-xlsx':
      return workbookOf(input);
    case 'mail-text':
      return Buffer.from(writerFor(input)(mailOf(input)), 'utf8');
  }
}

/** Numbers and dates are those of the schema; only notes and sentences follow the customer's form. */
function quotationOf(input: PapersInput): string {
  const { price, house } = input;
  const write = writerFor(input);
  return quotationXml({
    context: paperContext(input),
    validUntil: validUntil(input),
    currency: price.currency,
    lines: price.lines.map((line) => ({
      kind: line.kind === 'discount' ? 'discount' : 'charge',
      number: line.number,
      name: line.name,
      sentence: write(line.sentence),
      quantity: line.quantity,
      unit: line.unit ?? (line.kind === 'labour' ? 'hour' : 'piece'),
      unit_minor: line.unit_minor,
      net_minor: line.net_minor,
      taxCategory: line.tax,
    })),
    taxes: price.taxes,
    net_minor: price.net_minor,
    tax_minor: price.tax_minor,
    gross_minor: price.gross_minor,
    payment: (input.payment?.sentences ?? []).map(write),
    notes: [planSentence(input), ...price.notes, ...GENERAL_CAUTIONS].map(write),
    terms: house.terms.text,
  });
}

/** What each valve needs, option by option where there are several. */
function linesOf(input: PapersInput): LinesTable {
  return inTheirForm(allLines(input), input);
}

function allLines(input: PapersInput): LinesTable {
  const options = optionInputs(input);
  const tables = options.map((option) => linesTable({ lines: paperLines(option), unserved: unservedLines(option) }));
  const headings = tables[0]?.headings ?? [];
  if (tables.length === 1) return { headings, rows: tables[0]?.rows ?? [] };
  return {
    headings: ['option', ...headings],
    rows: tables.flatMap(({ rows }, index) =>
      rows.map((row) => [`${index + 1}: ${options[index]?.option?.name ?? ''}`, ...row]),
    ),
  };
}

function pricesOf(input: PapersInput): LinesTable {
  return inTheirForm(priceTable(quoteOptions(input)), input);
}

/** With the mark of the encoding, which spreadsheets need; a cell that would be read as a formula is held as text. */
function csvOf({ headings, rows }: LinesTable, { forms }: PapersInput): string {
  const fields = [...headings];
  const body =
    forms !== undefined && decimalMark(forms.numbers) === ','
      ? Papa.unparse({ fields, data: rows.map((row) => row.map(commaCell)) }, { delimiter: ';' })
      : Papa.unparse({ fields, data: rows.map((row) => [...row]) }, { escapeFormulae: true });
  return `\ufeff${body}\r\n`;
}

/** Where decimals follow a comma, semicolons part the cells; only texts can be read as formulas, figures cannot. */
function commaCell(cell: TableCell): string | null {
  if (typeof cell === 'number') return String(cell).replace('.', ',');
  return cell !== null && /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
}

/** Sentences follow the customer's form; a number stays a number, which the spreadsheet shows in its own. */
function inTheirForm(table: LinesTable, input: PapersInput): LinesTable {
  const write = writerFor(input);
  return {
    headings: table.headings,
    rows: table.rows.map((row) => row.map((cell) => (typeof cell === 'string' ? write(cell) : cell))),
  };
}

async function workbookOf(input: PapersInput): Promise<Buffer> {
  return stillZip(
    await writeExcelFile([sheetOf('Lines', linesOf(input)), sheetOf('Price', pricesOf(input))]).toBuffer(),
  );
}

function sheetOf(sheet: string, { headings, rows }: LinesTable) {
  const head = headings.map((value) => ({ value, fontWeight: 'bold' as const, wrap: true }));
  const body = rows.map((row) => row.map((value) => (value === null ? null : { value })));
  return {
    data: [head, ...body],
    sheet,
    stickyRowsCount: 1,
    columns: headings.map((heading) => ({ width: Math.min(40, Math.max(12, heading.length)) })),
  };
}

function mailOf(input: PapersInput): string {
  const { price, lines } = input;
  const context = paperContext(input);
  const parts = paperLines(input);
  const options = quoteOptions(input);
  return mailText({
    context,
    validUntil: validUntil(input),
    currency: price.currency,
    gross_minor: price.gross_minor,
    deposit_minor: price.deposit_minor,
    options: options.map((option, index) => ({
      title: optionTitle(option, index),
      gross_minor: option.price.total_minor,
    })),
    orderNumber: input.payment?.orderNumber ?? 'not asked for',
    ...(input.changes === undefined ? {} : { since: input.changes.since }),
    valves: lines.reduce((sum, { qty }) => sum + qty, 0),
    unserved: parts.filter(({ assembly }) => assembly === null).reduce((sum, { line }) => sum + line.qty, 0),
    assumed: gatherAssumptions(parts, context.system).length,
  });
}
