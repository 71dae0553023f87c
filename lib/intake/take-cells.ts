/*
 * A row of the file → canonical texts per column: units from the header, parallel columns joined, remarks gathered.
 * Invariant: a canonical text can be read without its header; where two columns disagree the first is kept and a problem says so.
 * Not here: reading the texts (read-line.ts).
 * Read next: take-rows.ts.
 */
import { LIMITS } from '#lib/kernel/limits.ts';
import { parseNumber } from '#lib/units/parse-number.ts';
import { YES_NO_WORDS } from './choice-words.ts';
import { type Cells, type Column, columnSpec } from './columns.ts';
import type { IntakeProblem } from './intake-problem.ts';
import type { Mapping } from './mapping.ts';
import { headerKey, isMissing, plainText, quoted, tidyCell } from './plain-text.ts';
import type { RawRow } from './raw-table.ts';
import { chooseWord } from './read-cell.ts';
import { recogniseKind } from './recognise-kind.ts';

type MutableCells = { -readonly [Name in Column]?: string };

export interface TakenCells {
  readonly cells: Cells;
  readonly problems: readonly IntakeProblem[];
}

export function takeCells(row: RawRow, mapping: Mapping): TakenCells {
  const cells: MutableCells = {};
  const problems: IntakeProblem[] = [];
  const notes: string[] = [];
  const labelled: string[] = [];
  const places: string[] = [];
  for (const column of mapping.columns) {
    const { field } = column;
    if (field === 'ignore') continue;
    const text = shorten({ text: tidyCell(row.cells[column.index] ?? ''), row: row.row, column, problems });
    if (isMissing(text)) continue;
    if (field === 'remark')
      labelled.push(column.header === '' ? text : `${tidyCell(column.header)}: ${plainNumber(text)}`);
    else if (field === 'notes') notes.push(text);
    else if (field === 'location') places.push(text);
    else {
      const value = withUnit({
        text: turnedByHeader({ header: column.header, field, text }),
        column: field,
        unit: column.unit,
      });
      const conflict = put({ cells, field, value });
      if (conflict !== null)
        problems.push({ code: 'columns-conflict', row: row.row, column: field, severity: 'doubt', ...conflict });
    }
  }
  if (places.length > 0) cells.location = [...new Set(places)].join(', ');
  const remarks = [...notes, ...labelled];
  if (remarks.length > 0) cells.notes = remarks.join('; ').slice(0, LIMITS.cell_characters);
  return { cells, problems };
}

/** Keeps the first value of a column; a more telling valve type replaces a word such as “Valve”. */
function put(parts: {
  readonly cells: MutableCells;
  readonly field: Column;
  readonly value: string;
}): { readonly sentence: string; readonly remedy: string } | null {
  const { cells, field, value } = parts;
  const before = cells[field];
  if (before === undefined) {
    cells[field] = value;
    return null;
  }
  if (isSame(before, value)) return null;
  if (field === 'valve_type') {
    const [first, second] = [recogniseKind(before), recogniseKind(value)];
    if (second === null || second.kind === 'line valve') return null;
    if (first === null || first.kind === 'line valve') {
      cells[field] = value;
      return null;
    }
  }
  if (field === 'tag') return null;
  return {
    sentence: `Two columns give ${columnSpec(field).label.toLowerCase()}: ${quoted(before)} and ${quoted(value)}; the first is taken.`,
    remedy: 'Say which column holds, or correct the row.',
  };
}

function isSame(a: string, b: string): boolean {
  const [x, y] = [parseNumber(a), parseNumber(b)];
  return x !== null && y !== null
    ? x.value === y.value
    : plainText(a).replace(/ /g, '') === plainText(b).replace(/ /g, '');
}

function shorten(parts: {
  readonly text: string;
  readonly row: number;
  readonly column: Mapping['columns'][number];
  readonly problems: IntakeProblem[];
}): string {
  const { text, row, column, problems } = parts;
  if (text.length <= LIMITS.cell_characters) return text;
  problems.push({
    code: 'cell-too-long',
    row,
    column: column.header || column.field,
    severity: 'doubt',
    sentence: `The cell holds ${text.length} characters; the first ${LIMITS.cell_characters} are kept.`,
    remedy: 'Shorten the text; the file itself is kept as it came.',
  });
  return text.slice(0, LIMITS.cell_characters);
}

/** A bare number gets the unit that its header names: `100.0` under `Size (mm)` is `100 mm`. */
export function withUnit(cell: {
  readonly text: string;
  readonly column: Column;
  readonly unit?: string | undefined;
}): string {
  const text = plainNumber(cell.text);
  if (cell.unit === undefined || !/^[<>~≈≤≥]?\s*[\d.,/\s½¼¾–-]+$/.test(text)) return text;
  if (cell.column === 'rating' && parseNumber(text) !== null)
    return /psi|#|lb/i.test(cell.unit) ? `${text} ${cell.unit}` : `PN ${text}`;
  return cell.column === 'rating' ? text : `${text} ${cell.unit}`;
}

/** `100.0` and `100.00` are `100`, as programs write whole numbers. */
export function plainNumber(text: string): string {
  return /^-?\d+\.0+$/.test(text) ? text.replace(/\.0+$/, '') : text;
}

/** Headers that ask a question: `Clockwise to close: yes`, `Normally open: no`, `Open direction: left`. */
export function turnedByHeader(cell: {
  readonly header: string;
  readonly field: Column;
  readonly text: string;
}): string {
  const { field, text } = cell;
  if (field !== 'closes' && field !== 'normal_position' && field !== 'position') return text;
  const key = headerKey(cell.header);
  const answer = /^(?:y|yes|n|no|true|false|1|0|1\.0|0\.0|t|f|ja|nein|oui|non|si|s)$/i.test(text)
    ? chooseWord(text.replace(/^t$/i, 'yes').replace(/^f$/i, 'no'), YES_NO_WORDS)
    : undefined;
  if (field === 'closes') {
    if (answer !== undefined && key.includes('clockwise'))
      return (answer === 'yes') === !/anti|counter/.test(key) ? 'clockwise' : 'anticlockwise';
    const opens = /open/.test(key) && !/clos/.test(key);
    if (!opens) return text;
    return /anti|counter|^ccw|^acw|left|^l$/i.test(text)
      ? 'clockwise'
      : /clock|^cw|right|^r$/i.test(text)
        ? 'anticlockwise'
        : text;
  }
  if (answer === undefined) return text;
  const asksOpen = /open/.test(key);
  const asksClosed = /clos|shut/.test(key);
  return asksOpen === asksClosed ? text : (answer === 'yes') === asksOpen ? 'open' : 'closed';
}
