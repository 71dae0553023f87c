/*
 * Saves edits of cells as they are made and answers with the lines as they now read.
 * Invariant: what was typed is kept even when it cannot be read; all edits of one call are saved together.
 * Not here: undo, which is the same call with the texts from before (they come back in the answer).
 * Read next: list-lines.ts.
 */
import { addAuditEntry } from '#db/queries/audit.ts';
import { changeEnquiry as touch } from '#db/queries/enquiries.ts';
import { changeLine, findLine } from '#db/queries/schedule.ts';
import { type Column, isColumn } from '#lib/intake/columns.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from './authorise.ts';
import { type Context, timestamp } from './context.ts';
import { readEnquiry } from './enquiry-record.ts';
import { type LineView, lineView } from './line-view.ts';
import { dutyOf, readRecord, readWritten } from './schedule-record.ts';
import { siteKnowledge } from './site-knowledge.ts';

export interface CellEdit {
  readonly lineId: number;
  readonly column: string;
  readonly text: string;
  /** Marks the value as measured on the valve, or no longer so; absent leaves the mark as it is. */
  readonly measured?: boolean | undefined;
}

export interface CellsEdited {
  readonly lines: readonly LineView[];
  /** The same cells with the texts they had: sending these back undoes the edit. */
  readonly undo: readonly CellEdit[];
}

export function editCells(
  context: Context,
  input: { readonly enquiryId: number; readonly edits: readonly CellEdit[] },
): Result<CellsEdited> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, input.enquiryId);
  if (!enquiry.ok) return enquiry;
  const refused = input.edits.map(refuseEdit).find((refusal) => refusal !== undefined);
  if (refused) return failed(refused);
  const at = timestamp(context);
  const saved = context.database.db.transaction(
    (tx): Result<{ readonly undo: readonly CellEdit[]; readonly ids: readonly number[] }> => {
      const undo: CellEdit[] = [];
      const ids = new Set<number>();
      for (const edit of input.edits) {
        const row = findLine(tx, { enquiryId: input.enquiryId, lineId: edit.lineId });
        if (!row)
          return failed({
            code: 'no-such-line',
            sentence: 'A line of this edit was removed by somebody else; load the schedule again.',
          });
        undo.unshift(applyEdit(tx, row, edit));
        ids.add(edit.lineId);
      }
      touch(tx, { id: input.enquiryId, at, set: { state: 'being worked' } });
      addAuditEntry(tx, {
        at,
        who: context.actor.name,
        action: 'cells edited',
        subject: `enquiry ${input.enquiryId}`,
        detail_json: JSON.stringify({ edits: input.edits, before: undo }),
      });
      return ok({ undo, ids: [...ids] });
    },
    { behavior: 'immediate' },
  );
  if (!saved.ok) return saved;
  const { site, row: enquiryRow } = enquiry.value;
  const knowledge = siteKnowledge(context, enquiry.value);
  const lines = saved.value.ids.flatMap((lineId) => {
    const row = findLine(context.database.db, { enquiryId: input.enquiryId, lineId });
    if (!row) return [];
    const record = readRecord(row, knowledge);
    return [lineView(record, dutyOf({ record, site, siteKey: enquiryRow.site_json }))];
  });
  return ok({ lines, undo: saved.value.undo });
}

function refuseEdit(edit: CellEdit): { readonly code: string; readonly sentence: string } | undefined {
  if (!isColumn(edit.column)) {
    return { code: 'no-such-column', sentence: `“${edit.column}” is not a column of the schedule.` };
  }
  if (edit.text.length > LIMITS.cell_characters) {
    return {
      code: 'cell-too-long',
      sentence: `A cell holds at most ${LIMITS.cell_characters} characters; shorten the text in ${edit.column}.`,
    };
  }
  return undefined;
}

type Tx = Parameters<typeof findLine>[0];
type Row = NonNullable<ReturnType<typeof findLine>>;

/** Writes one edit and answers with the edit that takes it back. */
function applyEdit(tx: Tx, row: Row, edit: CellEdit): CellEdit {
  const record = readWritten(row);
  const column = edit.column as Column;
  const { [column]: before, ...others } = record.cells;
  const wasMeasured = record.measured.includes(column);
  const cells = edit.text.trim() === '' ? others : { ...others, [column]: edit.text };
  const unmarked = record.measured.filter((name) => name !== column);
  const isMeasured = edit.measured ?? wasMeasured;
  const measured = isMeasured && edit.text.trim() !== '' ? [...unmarked, column] : unmarked;
  changeLine(tx, { lineId: row.id, cellsJson: JSON.stringify(cells), measuredJson: JSON.stringify(measured) });
  return { lineId: edit.lineId, column, text: before ?? '', measured: wasMeasured };
}
