/*
 * Makes lines of a received list with the mapping that a person has seen, or shows what would come of it.
 * Invariant: every row ends up a line, a row set aside or a refused row with its reason; all of them are stored, or none.
 * Not here: reading files (receive-list.ts).
 * Read next: ../intake/take-rows.ts.
 */
import { addAuditEntry } from '#db/queries/audit.ts';
import { changeEnquiry as changeRow } from '#db/queries/enquiries.ts';
import {
  deleteLines,
  findListFile,
  insertLines,
  lastPosition,
  listLines,
  settleListFile,
} from '#db/queries/schedule.ts';
import type { Mapping } from '#lib/intake/propose-mapping.ts';
import { readTables } from '#lib/intake/read-table.ts';
import { type Taken, takeRows } from '#lib/intake/take-rows.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from './authorise.ts';
import { type Context, timestamp } from './context.ts';

export interface ListChoice {
  readonly enquiryId: number;
  readonly fileId: number;
  readonly table: string;
  readonly mapping: Mapping;
}

/** What would come of the mapping: nothing is stored. */
export async function previewList(context: Context, choice: ListChoice): Promise<Result<Taken>> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const file = findListFile(context.database.db, { enquiryId: choice.enquiryId, fileId: choice.fileId });
  if (!file) return failed({ code: 'no-such-list', sentence: 'That list is not there any more; upload it again.' });
  const tables = await readTables({ bytes: file.bytes, fileName: file.file_name });
  if (!tables.ok) return tables;
  const table = tables.value.find((candidate) => candidate.name === choice.table);
  if (!table)
    return failed({
      code: 'no-such-sheet',
      sentence: `The list has no sheet “${choice.table}”; choose one of: ${tables.value.map((t) => t.name).join(', ')}.`,
    });
  return ok(takeRows({ table, mapping: choice.mapping }));
}

export interface TakeListChoice extends ListChoice {
  /** What happens to lines that are there already. */
  readonly existing: 'keep' | 'replace';
}

export async function takeList(context: Context, choice: TakeListChoice): Promise<Result<Taken['counts']>> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const taken = await previewList(context, choice);
  if (!taken.ok) return taken;
  const at = timestamp(context);
  context.database.db.transaction(
    (tx) => {
      if (choice.existing === 'replace') {
        const old = listLines(tx, choice.enquiryId).map((line) => line.id);
        if (old.length > 0) deleteLines(tx, { enquiryId: choice.enquiryId, lineIds: old });
      }
      const start = lastPosition(tx, choice.enquiryId);
      insertLines(
        tx,
        taken.value.lines.map((line, index) => ({
          enquiry_id: choice.enquiryId,
          position: start + index + 1,
          row: line.row,
          cells_json: JSON.stringify(line.cells),
          measured_json: '[]',
        })),
      );
      settleListFile(tx, {
        fileId: choice.fileId,
        mappingJson: JSON.stringify({ table: choice.table, mapping: choice.mapping }),
        outcomeJson: JSON.stringify({
          counts: taken.value.counts,
          setAside: taken.value.setAside,
          problems: taken.value.problems,
        }),
      });
      changeRow(tx, { id: choice.enquiryId, at, set: { state: 'being worked' } });
      addAuditEntry(tx, {
        at,
        who: context.actor.name,
        action: 'list taken',
        subject: `enquiry ${choice.enquiryId}`,
        detail_json: JSON.stringify(taken.value.counts),
      });
    },
    { behavior: 'immediate' },
  );
  return ok(taken.value.counts);
}
