/*
 * Reads the central directory of a zip archive: names, sizes and places of its entries, without unpacking.
 * Invariant: an archive that cannot be what it says (sizes, counts, places) is refused before a byte is unpacked.
 * Not here: unpacking (scan-workbook.ts).
 * Read next: scan-workbook.ts.
 */
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';

export interface ZipEntry {
  readonly name: string;
  readonly packedBytes: number;
  readonly unpackedBytes: number;
  readonly method: 'stored' | 'deflated' | 'other';
  readonly encrypted: boolean;
  /** Where the entry's local header starts. */
  readonly offset: number;
}

/** Structures and field places: PKWARE APPNOTE.TXT 6.3.10, sections 4.3.12 and 4.3.16. */
const END_SIGNATURE = 0x06054b50;
const ENTRY_SIGNATURE = 0x02014b50;
const END_BYTES = 22;
const ENTRY_BYTES = 46;
const LONGEST_COMMENT = 0xffff;
const MOST_ENTRIES = 5_000;

export function readZipDirectory(bytes: Uint8Array): Result<readonly ZipEntry[]> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(view);
  if (end === null) return broken();
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  if (count > MOST_ENTRIES) return bomb(`${count} parts`);
  const entries: ZipEntry[] = [];
  for (let index = 0; index < count; index += 1) {
    if (at + ENTRY_BYTES > view.byteLength || view.getUint32(at, true) !== ENTRY_SIGNATURE) return broken();
    const nameBytes = view.getUint16(at + 28, true);
    const next = at + ENTRY_BYTES + nameBytes + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    const method = view.getUint16(at + 10, true);
    entries.push({
      name: new TextDecoder().decode(bytes.subarray(at + ENTRY_BYTES, at + ENTRY_BYTES + nameBytes)),
      packedBytes: view.getUint32(at + 20, true),
      unpackedBytes: view.getUint32(at + 24, true),
      method: method === 8 ? 'deflated' : method === 0 ? 'stored' : 'other',
      encrypted: (view.getUint16(at + 8, true) & 1) === 1,
      offset: view.getUint32(at + 42, true),
    });
    at = next;
  }
  const unpacked = entries.reduce((total, entry) => total + entry.unpackedBytes, 0);
  return unpacked > LIMITS.workbook_unpacked_bytes ? bomb(`${Math.round(unpacked / 1024 / 1024)} MB`) : ok(entries);
}

function findEnd(view: DataView): number | null {
  const lowest = Math.max(0, view.byteLength - END_BYTES - LONGEST_COMMENT);
  for (let at = view.byteLength - END_BYTES; at >= lowest; at -= 1) {
    if (view.getUint32(at, true) === END_SIGNATURE) return at;
  }
  return null;
}

export function bomb(size: string): Result<never> {
  return failed({
    code: 'file-unpacks-too-large',
    sentence: `The workbook would unpack to ${size}, which is more than is opened (${LIMITS.workbook_unpacked_bytes / 1024 / 1024} MB). Copy the list alone into a new workbook, or save it as CSV.`,
  });
}

export function broken(): Result<never> {
  return failed({
    code: 'file-broken',
    sentence:
      'The workbook is damaged or cut short. Open it in a spreadsheet program, save it again as XLSX or CSV, and upload that.',
  });
}
