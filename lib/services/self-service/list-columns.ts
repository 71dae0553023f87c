/*
 * The columns of a list that an order's owner sent: what each was taken for, with its first values, and taking the list as they say.
 * Invariant: nothing is a line before its owner has seen the columns; a list is taken once, however often it is pressed.
 * Not here: a list that was understood at once (add-list.ts).
 * Read next: ../schedule/take-list.ts.
 */
import { countLines, findListFile } from '#db/queries/schedule.ts';
import { isColumn } from '#lib/intake/columns.ts';
import type { MappedColumn, Mapping } from '#lib/intake/propose-mapping.ts';
import { isBlankRow } from '#lib/intake/raw-table.ts';
import { readTables } from '#lib/intake/read-table.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { type ProposedTable, proposeTable } from '#lib/services/schedule/receive-list.ts';
import { previewList, takeList } from '#lib/services/schedule/take-list.ts';
import { type LinkAsked, type OpenOrder, openOrder, openToChange } from './open-link.ts';
import { roomFor } from './order-lines.ts';
import { changedDraft } from './order-record.ts';

export interface ListColumn {
  readonly index: number;
  readonly header: string;
  readonly field: string;
  readonly isUnderstood: boolean;
  /** The first values that are not blank. */
  readonly values: readonly string[];
}

export interface RowProblem {
  readonly row: number;
  /** Header of the column; empty where the row as a whole is meant. */
  readonly column: string;
  readonly sentence: string;
  readonly isRefused: boolean;
}

export interface ListColumnsView {
  readonly fileName: string;
  readonly table: string;
  readonly tables: readonly string[];
  readonly columns: readonly ListColumn[];
  /** Valves that would come of it. */
  readonly lines: number;
  readonly problems: readonly RowProblem[];
  readonly moreProblems: number;
}

export interface ListColumnsAsked extends LinkAsked {
  readonly fileId: number;
  /** Empty means the largest. */
  readonly table: string;
  /** What each column is to be taken for, by its place; those that are not named stay as proposed. */
  readonly fields: ReadonlyMap<number, string>;
}

const VALUES_SHOWN = 3;
const PROBLEMS_SHOWN = 30;

/** Whether every column that holds something was understood; otherwise its sender looks first. */
export function isUnderstood({ mapping, sample }: ProposedTable): boolean {
  return mapping.columns.every(
    (column) => column.confidence !== 'guess' || valuesOf(column, { mapping, sample }).length === 0,
  );
}

export async function openListColumns(context: Context, asked: ListColumnsAsked): Promise<Result<ListColumnsView>> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openOrder(context, asked);
  if (!opened.ok) return opened;
  const found = await listOf(opened.value, asked);
  if (!found.ok) return found;
  const { table, tables, mapping, fileName } = found.value;
  const { enquiry_id: enquiryId } = opened.value.order;
  const { desk } = opened.value;
  const preview = await previewList(desk, { enquiryId, fileId: asked.fileId, table: table.name, mapping });
  if (!preview.ok) return preview;
  const problems = problemsOf(preview.value);
  return ok({
    ...{ fileName, tables, table: table.name },
    columns: mapping.columns.flatMap((column): readonly ListColumn[] => {
      const values = valuesOf(column, { mapping, sample: table.sample });
      const { index, header, field, confidence } = column;
      return values.length === 0 ? [] : [{ index, header, field, isUnderstood: confidence !== 'guess', values }];
    }),
    lines: preview.value.lines.length,
    problems: problems.slice(0, PROBLEMS_SHOWN),
    moreProblems: Math.max(0, problems.length - PROBLEMS_SHOWN),
  });
}

declare global {
  var kitwrightTaking: Map<number, Promise<Result<{ readonly lines: number }>>> | undefined;
}

export async function takeListColumns(
  context: Context,
  asked: ListColumnsAsked,
): Promise<Result<{ readonly lines: number }>> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToChange(context, asked);
  if (!opened.ok) return opened;
  globalThis.kitwrightTaking ??= new Map();
  const under = globalThis.kitwrightTaking;
  const running = under.get(asked.fileId) ?? take(context, { opened: opened.value, asked });
  under.set(asked.fileId, running);
  try {
    return await running;
  } finally {
    under.delete(asked.fileId);
  }
}

interface Taking {
  readonly opened: OpenOrder;
  readonly asked: ListColumnsAsked;
}

async function take(context: Context, { opened, asked }: Taking): Promise<Result<{ readonly lines: number }>> {
  const { order, desk } = opened;
  const { enquiry_id: enquiryId } = order;
  const { db } = context.database;
  const file = findListFile(db, { enquiryId, fileId: asked.fileId });
  if (file !== undefined && file.outcome_json !== null) return ok({ lines: 0 });
  const found = await listOf(opened, asked);
  if (!found.ok) return found;
  const choice = { enquiryId, fileId: asked.fileId, table: found.value.table.name, mapping: found.value.mapping };
  const preview = await previewList(desk, choice);
  if (!preview.ok) return preview;
  if (preview.value.lines.length === 0)
    return failed({
      code: 'list-empty',
      sentence: 'No valve comes of that list: look at what the columns are taken for.',
    });
  const room = roomFor(countLines(db, enquiryId) + preview.value.lines.length);
  if (!room.ok) return room;
  const taken = await takeList(desk, { ...choice, existing: 'keep' });
  if (!taken.ok) return taken;
  changedDraft(context, opened);
  return ok({ lines: taken.value.lines });
}

interface FoundList {
  readonly fileName: string;
  readonly table: ProposedTable;
  readonly tables: readonly string[];
  readonly mapping: Mapping;
}

async function listOf({ order, desk }: OpenOrder, asked: ListColumnsAsked): Promise<Result<FoundList>> {
  const { fileId, table: name, fields } = asked;
  const file = findListFile(desk.database.db, { enquiryId: order.enquiry_id, fileId });
  if (file === undefined) return failed({ code: 'no-such-list', sentence: 'That list is not in this order.' });
  const read = await readTables({ bytes: file.bytes, fileName: file.file_name });
  if (!read.ok) return read;
  const tables = read.value.map(proposeTable);
  const table = tables.find((one) => one.name === name) ?? tables.toSorted((a, b) => b.rows - a.rows)[0];
  if (table === undefined) return failed({ code: 'list-empty', sentence: 'There is no table in that list.' });
  return ok({
    fileName: file.file_name,
    table,
    tables: tables.map((one) => one.name),
    mapping: { ...table.mapping, columns: table.mapping.columns.map((column) => chosenFor(column, fields)) },
  });
}

/** What its sender says of a column is believed; a name that there is not leaves it as it was proposed. */
function chosenFor(column: MappedColumn, fields: ListColumnsAsked['fields']): MappedColumn {
  const field = fields.get(column.index);
  if (field === undefined || field === column.field) return column;
  if (field !== 'ignore' && field !== 'remark' && !isColumn(field)) return column;
  const { index, header } = column;
  return { index, header, field, confidence: 'sure', why: 'Chosen by the customer.' };
}

type Sampled = Pick<ProposedTable, 'mapping' | 'sample'>;

function valuesOf({ index }: MappedColumn, { mapping: { headerRow }, sample }: Sampled): readonly string[] {
  return sample
    .filter((row) => (headerRow === null || row.row > headerRow) && !isBlankRow(row))
    .map(({ cells }) => (cells[index] ?? '').trim())
    .filter((text) => text !== '')
    .slice(0, VALUES_SHOWN);
}

function problemsOf({
  setAside,
  problems,
}: {
  readonly setAside: readonly { readonly row: number; readonly reason: string }[];
  readonly problems: readonly {
    readonly row: number;
    readonly column: string;
    readonly severity: string;
    readonly sentence: string;
    readonly remedy: string;
  }[];
}): readonly RowProblem[] {
  return [
    ...problems
      .filter(({ severity }) => severity !== 'note')
      .map(({ row, column, severity, sentence, remedy }) => ({
        ...{ row, column, isRefused: severity === 'refused' },
        sentence: `${sentence} ${remedy}`,
      })),
    ...setAside.map(({ row, reason }) => ({ row, column: '', sentence: reason, isRefused: true })),
  ].toSorted((a, b) => Number(b.isRefused) - Number(a.isRefused) || a.row - b.row);
}
