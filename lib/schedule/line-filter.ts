/*
 * Which lines of a schedule are shown, and in what order: said in the address of the screen, asked of each line.
 * Invariant: what is written into an address reads back as the same filter; what cannot be read is left out.
 * Not here: working duties out (lib/services/schedule/order-lines.ts).
 * Read next: order-lines.ts.
 */
import { COLUMN_NAMES, type Column } from '#lib/intake/column-names.ts';
import type { Cells } from '#lib/intake/columns.ts';

/** Figures of the duty that the table shows beside the cells. */
export const DUTY_COLUMNS = ['starting', 'running', 'turns', 'neverExceed'] as const;
export type DutyColumn = (typeof DUTY_COLUMNS)[number];

export const BASES = ['measured', 'stated', 'standard', 'computed', 'rule of thumb', 'assumed'] as const;
type BasisName = (typeof BASES)[number];

export type CellTest =
  | { readonly kind: 'has' | 'is' | 'lacks'; readonly text: string }
  | { readonly kind: 'empty' | 'filled' | 'measured' | 'unmeasured' };

/** What is to settle about a line; `problems` is anything that reading its cells brought up. */
export const FINDING_CHOICES = ['all', 'problems', 'refused', 'doubt', 'warnings', 'clear'] as const;
export type FindingChoice = (typeof FINDING_CHOICES)[number];

export interface LineFilter {
  /** Text that some cell must hold. */
  readonly text: string;
  readonly findings: FindingChoice;
  readonly cells: readonly { readonly column: Column; readonly test: CellTest }[];
  readonly bases: readonly { readonly column: DutyColumn; readonly basis: BasisName }[];
  readonly sort: { readonly column: Column | DutyColumn; readonly way: 'up' | 'down' } | null;
}

export const NO_FILTER: LineFilter = { text: '', findings: 'all', cells: [], bases: [], sort: null };

/** Whether all lines are shown, in whatever order. */
export function showsAll({ text, findings, cells, bases }: LineFilter): boolean {
  return text.trim() === '' && findings === 'all' && cells.length === 0 && bases.length === 0;
}

export interface SeenLine {
  readonly cells: Cells;
  readonly measured: readonly Column[];
  readonly problems: readonly { readonly severity: string }[];
}

interface SeenDuty {
  readonly starting: { readonly basis: string; readonly nominal: number };
  readonly running: { readonly basis: string; readonly nominal: number };
  readonly turns: { readonly basis: string; readonly nominal: number };
  readonly neverExceed: { readonly basis: string; readonly nominal: number };
  readonly findings: readonly { readonly severity: string }[];
}

/** Whether the duty must be known to tell. */
export function asksDuty({ findings, bases, sort }: LineFilter): boolean {
  return findings === 'warnings' || findings === 'clear' || bases.length > 0 || (sort !== null && isDuty(sort.column));
}

export function isBasis(text: string): text is BasisName {
  return BASES.some((name) => name === text);
}

export function isDuty(column: string): column is DutyColumn {
  return DUTY_COLUMNS.some((name) => name === column);
}

/** What can be told from the cells alone; the rest is asked of the duty. */
export function cellsPass(filter: LineFilter, line: SeenLine): boolean {
  const text = filter.text.trim().toLowerCase();
  if (text !== '' && !Object.values(line.cells).some((cell) => cell.toLowerCase().includes(text))) return false;
  if (!problemsPass(filter.findings, line)) return false;
  return filter.cells.every(({ column, test }) => cellPasses({ column, test, line }));
}

function problemsPass(findings: FindingChoice, { problems }: SeenLine): boolean {
  if (findings === 'problems') return problems.length > 0;
  if (findings === 'refused') return problems.some(({ severity }) => severity === 'refused');
  if (findings === 'doubt') return problems.some(({ severity }) => severity === 'doubt');
  if (findings === 'clear') return problems.every(({ severity }) => severity === 'note');
  return true;
}

interface CellTested {
  readonly column: Column;
  readonly test: CellTest;
  readonly line: SeenLine;
}

function cellPasses({ column, test, line }: CellTested): boolean {
  const cell = (line.cells[column] ?? '').trim().toLowerCase();
  switch (test.kind) {
    case 'has':
      return cell.includes(test.text.trim().toLowerCase());
    case 'lacks':
      return !cell.includes(test.text.trim().toLowerCase());
    case 'is':
      return cell === test.text.trim().toLowerCase();
    case 'empty':
      return cell === '';
    case 'filled':
      return cell !== '';
    case 'measured':
      return line.measured.includes(column);
    case 'unmeasured':
      return cell !== '' && !line.measured.includes(column);
  }
}

export function dutyPasses(filter: LineFilter, duty: SeenDuty): boolean {
  const warned = duty.findings.some(({ severity }) => severity !== 'note');
  if (filter.findings === 'warnings' && !warned) return false;
  if (filter.findings === 'clear' && warned) return false;
  return filter.bases.every(({ column, basis }) => duty[column].basis === basis);
}

/** The filter as the query of an address; nothing for a filter that shows all in the list's order. */
export function filterToQuery({ text, findings, cells, bases, sort }: LineFilter): string {
  const query = new URLSearchParams();
  if (text.trim() !== '') query.set('text', text);
  if (findings !== 'all') query.set('only', findings);
  for (const { column, test } of cells) query.append('where', `${column}:${test.kind}${ending(test)}`);
  for (const { column, basis } of bases) query.append('where', `${column}:basis:${basis}`);
  if (sort) query.set('sort', `${sort.way === 'down' ? '-' : ''}${sort.column}`);
  return query.toString();
}

function ending(test: CellTest): string {
  return 'text' in test ? `:${test.text}` : '';
}

export function filterFromQuery(query: URLSearchParams): LineFilter {
  const where = query.getAll('where').map(readWhere);
  return {
    text: query.get('text') ?? '',
    findings: FINDING_CHOICES.find((name) => name === query.get('only')) ?? 'all',
    cells: where.flatMap((one) => (one && 'test' in one ? [one] : [])),
    bases: where.flatMap((one) => (one && 'basis' in one ? [one] : [])),
    sort: readSort(query.get('sort') ?? ''),
  };
}

function readWhere(text: string): LineFilter['cells'][number] | LineFilter['bases'][number] | undefined {
  const [column = '', kind = '', ...rest] = text.split(':');
  const said = rest.join(':');
  if (isDuty(column)) {
    const basis = BASES.find((name) => name === said);
    return kind === 'basis' && basis ? { column, basis } : undefined;
  }
  if (!isColumn(column)) return undefined;
  if (kind === 'has' || kind === 'is' || kind === 'lacks') return { column, test: { kind, text: said } };
  if (kind === 'empty' || kind === 'filled' || kind === 'measured' || kind === 'unmeasured')
    return { column, test: { kind } };
  return undefined;
}

const NAMES: ReadonlySet<string> = new Set(COLUMN_NAMES);

/** The names alone: a browser that reads an address need not load what each column means. */
function isColumn(text: string): text is Column {
  return NAMES.has(text);
}

function readSort(text: string): LineFilter['sort'] {
  const column = text.replace(/^-/, '');
  if (!isDuty(column) && !isColumn(column)) return null;
  return { column, way: text.startsWith('-') ? 'down' : 'up' };
}
