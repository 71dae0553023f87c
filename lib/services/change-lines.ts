/*
 * Adds lines typed or pasted at the Desk and removes lines.
 * Invariant: removed lines come back whole in the answer, so that undo can add them again.
 * Not here: editing cells of lines that are there (edit-cells.ts).
 * Read next: edit-cells.ts.
 */
import { addAuditEntry } from '#db/queries/audit.ts';
import { changeEnquiry as touch } from '#db/queries/enquiries.ts';
import { deleteLines, findLine, insertLines, lastPosition } from '#db/queries/schedule.ts';
import type { Cells } from '#lib/intake/columns.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from './authorise.ts';
import { type Context, timestamp } from './context.ts';
import { readEnquiry } from './enquiry-record.ts';

export interface NewLine {
  readonly cells: Cells;
  readonly measured?: readonly string[] | undefined;
  /** Where a removed line stood: given back, it goes there again instead of to the end. */
  readonly place?: { readonly position: number; readonly row: number } | undefined;
}

export function addLines(
  context: Context,
  input: { readonly enquiryId: number; readonly lines: readonly NewLine[] },
): Result<{ readonly lineIds: readonly number[] }> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, input.enquiryId);
  if (!enquiry.ok) return enquiry;
  if (input.lines.length > LIMITS.schedule_lines) {
    return failed({
      code: 'too-many-lines',
      sentence: `A schedule holds at most ${LIMITS.schedule_lines} lines; split the list over several enquiries.`,
    });
  }
  const at = timestamp(context);
  const lineIds = context.database.db.transaction(
    (tx) => {
      const start = lastPosition(tx, input.enquiryId);
      const ids = insertLines(
        tx,
        input.lines.map((line, index) => ({
          enquiry_id: input.enquiryId,
          position: line.place?.position ?? start + index + 1,
          row: line.place?.row ?? start + index + 1,
          cells_json: JSON.stringify(line.cells),
          measured_json: JSON.stringify(line.measured ?? []),
        })),
      );
      touch(tx, { id: input.enquiryId, at, set: { state: 'being worked' } });
      addAuditEntry(tx, {
        at,
        who: context.actor.name,
        action: 'lines added',
        subject: `enquiry ${input.enquiryId}`,
        detail_json: JSON.stringify({ ids }),
      });
      return ids;
    },
    { behavior: 'immediate' },
  );
  return ok({ lineIds });
}

export function removeLines(
  context: Context,
  input: { readonly enquiryId: number; readonly lineIds: readonly number[] },
): Result<{ readonly removed: readonly NewLine[] }> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const at = timestamp(context);
  const removed = context.database.db.transaction(
    (tx) => {
      const rows = input.lineIds.flatMap((lineId) => findLine(tx, { enquiryId: input.enquiryId, lineId }) ?? []);
      deleteLines(tx, input);
      touch(tx, { id: input.enquiryId, at, set: { state: 'being worked' } });
      addAuditEntry(tx, {
        at,
        who: context.actor.name,
        action: 'lines removed',
        subject: `enquiry ${input.enquiryId}`,
        detail_json: JSON.stringify(rows),
      });
      return rows.map(
        (row): NewLine => ({
          cells: JSON.parse(row.cells_json) as Cells,
          measured: JSON.parse(row.measured_json) as string[],
          place: { position: row.position, row: row.row },
        }),
      );
    },
    { behavior: 'immediate' },
  );
  return ok({ removed });
}
