/*
 * Takes a customer's list in: keeps its bytes, reads its tables and proposes what each column means.
 * Invariant: an accepted file is stored byte for byte before anything is read out of it; no line is made yet.
 * Not here: making lines (take-list.ts).
 * Read next: take-list.ts, ../../intake/read-table.ts.
 */
import { addAuditEntry } from '#db/queries/audit.ts';
import { insertListFile } from '#db/queries/schedule.ts';
import { type Mapping, proposeMapping } from '#lib/intake/propose-mapping.ts';
import { type RawTable, readTables } from '#lib/intake/read-table.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { sha256 } from '#lib/services/sha256.ts';

export interface ProposedTable {
  readonly name: string;
  readonly rows: number;
  readonly notes: readonly string[];
  readonly mapping: Mapping;
  /** The first rows, as they stand in the file. */
  readonly sample: RawTable['rows'];
}

export interface ReceivedList {
  readonly fileId: number;
  readonly fileName: string;
  readonly tables: readonly ProposedTable[];
}

const SAMPLE_ROWS = 30;

export interface ListUpload {
  readonly enquiryId: number;
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

export async function receiveList(context: Context, upload: ListUpload): Promise<Result<ReceivedList>> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, upload.enquiryId);
  if (!enquiry.ok) return enquiry;
  const tables = await readTables({ bytes: upload.bytes, fileName: upload.fileName });
  if (!tables.ok) return tables;
  const at = timestamp(context);
  const fileId = context.database.db.transaction((tx) => {
    const id = insertListFile(tx, {
      enquiry_id: upload.enquiryId,
      file_name: upload.fileName,
      bytes: Buffer.from(upload.bytes),
      sha256: sha256(upload.bytes),
      received_at: at,
      mapping_json: null,
      outcome_json: null,
    });
    addAuditEntry(tx, {
      at,
      who: context.actor,
      action: 'list received',
      subject: `enquiry ${upload.enquiryId}`,
      detail_json: JSON.stringify({ file: upload.fileName, id }),
    });
    return id;
  });
  return ok({ fileId, fileName: upload.fileName, tables: tables.value.map(proposeTable) });
}

export function proposeTable(table: RawTable): ProposedTable {
  return {
    name: table.name,
    rows: table.rows.length,
    notes: table.notes,
    mapping: proposeMapping(table),
    sample: table.rows.slice(0, SAMPLE_ROWS),
  };
}
