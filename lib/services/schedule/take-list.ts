/*
 * Makes lines of a received list with the mapping that a person has seen, or shows what would come of it.
 * Invariant: every row ends up a line, a row set aside or a refused row with its reason; all of them are stored, or none.
 * Not here: reading files (receive-list.ts).
 * Read next: ../../intake/take-rows.ts.
 */
import { findListFile, lastPosition, lineStamps, settleListFile } from '#db/queries/schedule.ts';
import type { Mapping } from '#lib/intake/propose-mapping.ts';
import { readTables } from '#lib/intake/read-table.ts';
import { type Taken, takeRows } from '#lib/intake/take-rows.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { applyChange } from './apply-change.ts';
import { announceChange } from './live-changes.ts';

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

/** What became of the rows, and the number of the change, for undo. */
export type ListTaken = Taken['counts'] & { readonly change: number };

export async function takeList(context: Context, choice: TakeListChoice): Promise<Result<ListTaken>> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const taken = await previewList(context, choice);
  if (!taken.ok) return taken;
  const change = context.database.db.transaction(
    (tx) => {
      const old = choice.existing === 'replace' ? lineStamps(tx, choice.enquiryId).map(({ id }) => id) : [];
      const start = lastPosition(tx, choice.enquiryId);
      settleListFile(tx, {
        fileId: choice.fileId,
        mappingJson: JSON.stringify({ table: choice.table, mapping: choice.mapping }),
        outcomeJson: JSON.stringify(outcomeOf(taken.value)),
      });
      const add = taken.value.lines.map(({ row, cells }, index) => ({
        ...{ position: start + index + 1, row, cells, measured: [], listed: cells },
      }));
      return applyChange(context, tx, { enquiryId: choice.enquiryId, kind: 'list', change: { remove: old, add } })
        .change;
    },
    { behavior: 'immediate' },
  );
  if (change > 0) announceChange(choice.enquiryId);
  return ok({ ...taken.value.counts, change });
}

/** What is kept of how a list was taken: its counts, what was set aside and what is to settle. */
export function outcomeOf({ counts, setAside, problems }: Taken): Pick<Taken, 'counts' | 'setAside' | 'problems'> {
  return { counts, setAside, problems };
}
