/*
 * Valves of an order: adds them, takes answers to questions, and removes them.
 * Invariant: “I don't know” empties the cell and is remembered; an answer that cannot be read changes nothing and says why.
 * Not here: lists (add-list.ts) and photos (add-photo.ts).
 * Read next: open-link.ts, ../../questions/question.ts.
 */
import { countLines, findLine } from '#db/queries/schedule.ts';
import { lineAnswers, writeLineAnswer } from '#db/queries/self-orders.ts';
import { type Cells, type Column, isColumn } from '#lib/intake/columns.ts';
import { readLine } from '#lib/intake/read-line.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { addLines, removeLines } from '#lib/services/schedule/change-lines.ts';
import { editCells } from '#lib/services/schedule/edit-cells.ts';
import { type LinkAsked, openToChange } from './open-link.ts';
import { changedDraft } from './order-record.ts';

/** An answer by column: a text, or that it is not known. */
export interface ValveAnswer {
  readonly column: string;
  readonly text: string;
  readonly unknown: 'yes' | 'no';
}

export interface NewValve extends LinkAsked {
  readonly answers: readonly ValveAnswer[];
}

export function addValve(context: Context, input: NewValve): Result<{ readonly lineId: number }> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToChange(context, input);
  if (!opened.ok) return opened;
  const { desk, order } = opened.value;
  const { db } = context.database;
  const there = countLines(db, order.enquiry_id);
  const room = roomFor(there + 1);
  if (!room.ok) return room;
  const read = readAnswers({}, input.answers);
  if (!read.ok) return read;
  const cells = { tag: `V${there + 1}`, ...read.value.cells };
  const added = addLines(desk, { enquiryId: order.enquiry_id, lines: [{ cells }] });
  if (!added.ok) return added;
  const lineId = added.value.lineIds[0] ?? 0;
  writeLineAnswer(db, { lineId, set: { unknown_json: JSON.stringify(read.value.unknown) } });
  changedDraft(context, opened.value);
  return ok({ lineId });
}

export interface ValveAnswers extends NewValve {
  readonly lineId: number;
}

export function answerValve(context: Context, input: ValveAnswers): Result<{ readonly lineId: number }> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToChange(context, input);
  if (!opened.ok) return opened;
  const { desk, order } = opened.value;
  const { db } = context.database;
  const row = findLine(db, { enquiryId: order.enquiry_id, lineId: input.lineId });
  if (row === undefined) return noSuchValve();
  const before = unknownOf(context, { enquiryId: order.enquiry_id, lineId: input.lineId });
  const read = readAnswers(JSON.parse(row.cells_json) as Cells, input.answers);
  if (!read.ok) return read;
  const edits = Object.entries(read.value.cells).map(([column, text]) => ({
    lineId: input.lineId,
    column,
    text: text ?? '',
  }));
  if (edits.length > 0) {
    const edited = editCells(desk, { enquiryId: order.enquiry_id, edits });
    if (!edited.ok) return edited;
  }
  const answered = new Set(input.answers.map(({ column }) => column));
  const unknown = [...before.filter((column) => !answered.has(column)), ...read.value.unknown];
  writeLineAnswer(db, { lineId: input.lineId, set: { unknown_json: JSON.stringify([...new Set(unknown)]) } });
  changedDraft(context, opened.value);
  return ok({ lineId: input.lineId });
}

export function removeValve(
  context: Context,
  input: LinkAsked & { readonly lineId: number },
): Result<{ readonly left: number }> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToChange(context, input);
  if (!opened.ok) return opened;
  const enquiryId = opened.value.order.enquiry_id;
  if (findLine(context.database.db, { enquiryId, lineId: input.lineId }) === undefined) return noSuchValve();
  const removed = removeLines(opened.value.desk, { enquiryId, lineIds: [input.lineId] });
  if (!removed.ok) return removed;
  changedDraft(context, opened.value);
  return ok({ left: countLines(context.database.db, enquiryId) });
}

/** Columns of a valve that were answered with “I don't know”. */
export function unknownOf(
  context: Context,
  { enquiryId, lineId }: { readonly enquiryId: number; readonly lineId: number },
): readonly Column[] {
  const row = lineAnswers(context.database.db, enquiryId).get(lineId);
  return row === undefined ? [] : readUnknown(row.unknown_json);
}

export function readUnknown(json: string): readonly Column[] {
  const listed: unknown = JSON.parse(json);
  return Array.isArray(listed)
    ? listed.filter((name): name is Column => typeof name === 'string' && isColumn(name))
    : [];
}

export function roomFor(lines: number): Result<true> {
  if (lines <= LIMITS.self_service_lines) return ok(true);
  return failed({
    code: 'too-many-lines',
    sentence: `An order without the house holds at most ${LIMITS.self_service_lines} valves: send the whole list to the house instead.`,
  });
}

export function noSuchValve(): Result<never> {
  return failed({ code: 'no-such-line', sentence: 'That valve is not in this order any more; go back to the list.' });
}

interface ReadAnswers {
  readonly cells: Cells;
  readonly unknown: readonly Column[];
}

/** The cells that the answers write. All of them are read before any is written. */
function readAnswers(before: Cells, answers: readonly ValveAnswer[]): Result<ReadAnswers> {
  const cells: Partial<Record<Column, string>> = {};
  const unknown: Column[] = [];
  for (const { column, text, unknown: isUnknown } of answers) {
    if (!isColumn(column))
      return failed({ code: 'no-such-column', sentence: `There is no question “${column.slice(0, 60)}”.` });
    if (isUnknown === 'yes') unknown.push(column);
    const kept = isUnknown === 'yes' ? '' : text.trim().slice(0, LIMITS.cell_characters);
    if (kept !== '' || (before[column] ?? '') !== '') cells[column] = kept;
  }
  const { problems } = readLine({ row: 1, cells: { ...before, ...cells } });
  const answered = new Set(answers.map(({ column }) => column));
  const own = problems.find(({ column }) => answered.has(column));
  return own === undefined
    ? ok({ cells, unknown })
    : failed({ code: 'answer-unreadable', sentence: `${own.sentence} ${own.remedy}` });
}
