/*
 * Proposes what each column of a table means, with how sure that is and why; a person may correct it before rows are taken.
 * Invariant: every column of the table is in the proposal; a column whose cells contradict its header loses it.
 * Not here: taking the rows (take-rows.ts).
 * Read next: match-header.ts, judge-column.ts, take-rows.ts.
 */
import { findUnit } from '#lib/units/unit-table.ts';
import { findHeader } from './find-header.ts';
import { lookOf, readableShare, sampleColumn } from './judge-column.ts';
import type { MappedColumn as TableColumn, Mapping as TableMapping } from './mapping.ts';
import { dimensionsOf, type Field, type HeaderMatch, matchHeader } from './match-header.ts';
import { headerKey, quoted, tidyCell } from './plain-text.ts';
import { isBlankRow, type RawTable } from './raw-table.ts';

export type Mapping = TableMapping;
export type MappedColumn = TableColumn;

/** No header is longer; what is pasted there by mistake may be. */
const LONGEST_HEADER = 200;
/** Less than this share readable, and the header is not believed. */
const BELIEVED_SHARE = 0.4;
/** Columns where several may stand side by side. */
const GATHERED: ReadonlySet<Field> = new Set(['remark', 'ignore', 'location', 'notes']);
/** Headers of a tag from the most telling to the least. */
const TAG_HEADERS = [
  'tag',
  'tagno',
  'valvetag',
  'valveno',
  'valvenumber',
  'valveid',
  'valveref',
  'facilityid',
  'assetid',
  'idcode',
];

export function proposeMapping(table: RawTable): Mapping {
  const header = findHeader(table);
  const headerRow = header?.row ?? null;
  const width = table.rows.reduce((widest, row) => Math.max(widest, row.cells.length), 0);
  const units = unitsRow(table, headerRow);
  const columns = Array.from({ length: width }, (_unused, index) =>
    proposeColumn({
      table,
      index,
      headerRow,
      header: tidyCell((header?.cells[index] ?? '').slice(0, LONGEST_HEADER)),
      unitBelow: tidyCell(units?.[index] ?? ''),
    }),
  );
  return { headerRow, columns: settleRepeats(settleTags({ table, headerRow, columns })) };
}

/** A row of units straight below the headers: `mm`, `bar`, blank. */
export function unitsRow(table: RawTable, headerRow: number | null): readonly string[] | null {
  if (headerRow === null) return null;
  const below = table.rows.find((row) => row.row > headerRow && !isBlankRow(row));
  const filled = below?.cells.map(tidyCell).filter((cell) => cell !== '') ?? [];
  const areUnits = filled.length > 0 && filled.every((cell) => isUnitName(cell.replace(/^[([]|[)\]]$/g, '')));
  return areUnits ? (below?.cells ?? null) : null;
}

function isUnitName(text: string): boolean {
  const dimensions = [
    'length',
    'pressure',
    'torque',
    'force',
    'temperature',
    'turns',
    'time',
    'angle',
    'rotation',
    'ratio',
  ] as const;
  return (
    /\D/.test(text) && (text === '-' || dimensions.some((dimension) => findUnit({ text, dimension }) !== undefined))
  );
}

function proposeColumn(place: {
  readonly table: RawTable;
  readonly index: number;
  readonly headerRow: number | null;
  readonly header: string;
  readonly unitBelow: string;
}): MappedColumn {
  const { table, index, headerRow, header } = place;
  const sample = sampleColumn(table, { index, headerRow });
  const base = { index, header };
  const match = matchHeader(header);
  if (match === null) {
    const look = lookOf(sample);
    return {
      ...base,
      field: look.field,
      confidence: 'guess',
      why: header === '' ? look.why : `The header ${quoted(header)} is not known. ${look.why}`,
    };
  }
  const unit = match.unit ?? unitFor(match.field, place.unitBelow.replace(/^[([]|[)\]]$/g, ''));
  const share = readableShare(sample, { column: match.field, header, unit, confidence: match.confidence });
  if (sample.length > 0 && match.field === 'age' && sample.every((cell) => Number(cell) === 0)) {
    return { ...base, field: 'ignore', confidence: 'likely', why: `${match.why} It holds nothing but zeros.` };
  }
  if (share < BELIEVED_SHARE) {
    return {
      ...base,
      field: 'remark',
      confidence: 'guess',
      why: `${match.why} But only ${Math.round(share * 100)} % of its cells can be read so; it is kept as a remark.`,
    };
  }
  return { ...base, ...match, ...(unit === undefined ? {} : { unit }) };
}

function unitFor(field: Field, text: string): string | undefined {
  if (text === '' || field === 'remark' || field === 'ignore') return undefined;
  return dimensionsOf(field).some((dimension) => findUnit({ text, dimension })) ? text : undefined;
}

/** One tag column: the most telling header, and among equals the one with fewest gaps and repeats. */
function settleTags(parts: {
  readonly table: RawTable;
  readonly headerRow: number | null;
  readonly columns: readonly MappedColumn[];
}): readonly MappedColumn[] {
  const { table, headerRow, columns } = parts;
  const tags = columns.filter((column) => column.field === 'tag');
  if (tags.length <= 1) return columns;
  const scored = tags.map((column) => {
    const sample = sampleColumn(table, { index: column.index, headerRow });
    const rank = TAG_HEADERS.indexOf(headerKey(column.header));
    const sure = column.confidence === 'sure' ? 1 : 0;
    return {
      column,
      score:
        new Set(sample).size / Math.max(1, sample.length) +
        (rank === -1 ? 0 : 2 - rank / 20) +
        sure +
        Math.min(1, sample.length / 20),
    };
  });
  const best = scored.reduce((top, next) => (next.score > top.score ? next : top)).column;
  return columns.map((column) =>
    column.field === 'tag' && column !== best
      ? {
          ...column,
          field: 'ignore',
          confidence: 'likely',
          why: `${column.why} ${quoted(best.header)} is taken as the tag instead.`,
        }
      : column,
  );
}

/** A column recognised only by words in its header steps back where another has the name itself. */
function settleRepeats(columns: readonly MappedColumn[]): readonly MappedColumn[] {
  const sure = new Set(columns.filter((column) => column.confidence === 'sure').map((column) => column.field));
  return columns.map((column) => {
    const weak: HeaderMatch['confidence'][] = ['likely', 'guess'];
    const byWords = weak.includes(column.confidence) && !column.why.includes('cut short');
    if (GATHERED.has(column.field) || !byWords || !sure.has(column.field)) return column;
    const { unit: _unit, ...rest } = column;
    return {
      ...rest,
      field: 'remark',
      confidence: 'guess',
      why: `${column.why} Another column has that name itself; this one is kept as a remark.`,
    };
  });
}
