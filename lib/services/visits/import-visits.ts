/*
 * Takes a filled-in as-found list (CSV, TSV, XLSX) in: the good rows are recorded, the others named cell by cell.
 * Invariant: taking the same list in again changes nothing; a corrected list replaces what it corrects.
 * Not here: keeping them (record-visits.ts).
 * Read next: record-visits.ts, ../../found/match-found.ts.
 */
import { foundTemplate } from '#lib/found/found-template.ts';
import { foundRows } from '#lib/found/match-found.ts';
import { readTables } from '#lib/intake/read-table.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { openVisits } from './open-visits.ts';
import { recordVisits, type VisitsRecorded } from './record-visits.ts';

export interface VisitsImported extends VisitsRecorded {
  readonly unknown: readonly string[];
}

export async function importVisits(
  context: Context,
  upload: { readonly enquiryId: number; readonly fileName: string; readonly bytes: Uint8Array },
): Promise<Result<VisitsImported>> {
  const allowed = authorise(context, 'record visits');
  if (!allowed.ok) return allowed;
  const tables = await readTables(upload);
  if (!tables.ok) return tables;
  const [table] = tables.value;
  if (table === undefined) return failed({ code: 'file-empty', sentence: 'There is no table in the file.' });
  const matched = foundRows(table);
  if (!matched.ok) return matched;
  const { rows, unknown } = matched.value;
  if (rows.length === 0)
    return failed({ code: 'found-nothing', sentence: 'No row says what was found: fill the list in first.' });
  const recorded = recordVisits(context, { enquiryId: upload.enquiryId, rows });
  return recorded.ok ? ok({ ...recorded.value, unknown }) : recorded;
}

/** The list to fill in, with the enquiry's valves in working order. */
export function visitTemplate(context: Context, enquiryId: number): Result<string> {
  const opened = openVisits(context, enquiryId);
  return opened.ok ? ok(foundTemplate(opened.value.valves)) : opened;
}
