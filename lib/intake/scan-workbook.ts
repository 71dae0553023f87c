/*
 * Looks through the sheets of a workbook before they are read: real unpacked size, and how far their cells reach.
 * Invariant: never holds more than one piece of a sheet; stops at the first byte past the limit, whatever the directory says.
 * Not here: cell values (read-workbook.ts).
 * Read next: read-workbook.ts.
 */
import { LIMITS } from '#lib/kernel/limits.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { bomb, broken, type ZipEntry } from './zip-directory.ts';

export interface SheetReach {
  readonly lastRow: number;
  readonly lastColumn: number;
  /** Sum over the rows of their last column, empty cells with a style included: what reading them would hold. */
  readonly cellsHeld: number;
  readonly bytes: number;
}

/** Fixed part of a local header. PKWARE APPNOTE.TXT 6.3.10, section 4.3.7. */
const LOCAL_BYTES = 30;
const CELL = /<(?:\w+:)?c\s[^>]*?\br="([A-Z]{1,3})(\d{1,7})"[^>]*?(\/?)>/g;
/** A cell's tag is shorter than this; so much of a piece is looked at again with the next one. */
const OVERLAP = 512;

export async function scanSheet(bytes: Uint8Array, entry: ZipEntry): Promise<Result<SheetReach>> {
  const packed = packedBytes(bytes, entry);
  if (packed === null || entry.method === 'other') return broken();
  const reach = { lastRow: 0, lastColumn: 0, cellsHeld: 0, bytes: 0 };
  const ends = new Map<number, number>();
  const decoder = new TextDecoder();
  let tail = '';
  const take = (piece: Uint8Array): boolean => {
    reach.bytes += piece.length;
    const text = tail + decoder.decode(piece, { stream: true });
    let seen = 0;
    for (const match of text.matchAll(CELL)) {
      const [whole, letters = '', digits = '', closed] = match;
      seen = match.index + whole.length;
      noteCell({ reach, ends, row: Number(digits), column: columnNumber(letters), empty: closed === '/' });
    }
    tail = text.slice(Math.max(seen, text.length - OVERLAP));
    return reach.bytes <= LIMITS.workbook_unpacked_bytes;
  };
  const outcome = entry.method === 'stored' ? take(packed) : await inflate(packed, take);
  if (outcome === 'damaged') return broken();
  if (outcome === false) return bomb(`more than ${LIMITS.workbook_unpacked_bytes / 1024 / 1024} MB`);
  return ok({ ...reach, cellsHeld: [...ends.values()].reduce((sum, end) => sum + end, 0) });
}

function noteCell(seen: {
  readonly reach: { lastRow: number; lastColumn: number };
  readonly ends: Map<number, number>;
  readonly row: number;
  readonly column: number;
  readonly empty: boolean;
}): void {
  const { reach, ends, row, column } = seen;
  if (column > (ends.get(row) ?? 0)) ends.set(row, column);
  if (seen.empty) return;
  if (row > reach.lastRow) reach.lastRow = row;
  if (column > reach.lastColumn) reach.lastColumn = column;
}

function packedBytes(bytes: Uint8Array, entry: ZipEntry): Uint8Array | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (entry.offset + LOCAL_BYTES > bytes.length) return null;
  const start =
    entry.offset + LOCAL_BYTES + view.getUint16(entry.offset + 26, true) + view.getUint16(entry.offset + 28, true);
  return start + entry.packedBytes > bytes.length ? null : bytes.subarray(start, start + entry.packedBytes);
}

/** Unpacks piece by piece; `false` when `take` wanted no more, `damaged` when the data is not what it says. */
async function inflate(packed: Uint8Array, take: (piece: Uint8Array) => boolean): Promise<boolean | 'damaged'> {
  const stream = new DecompressionStream('deflate-raw');
  const writer = stream.writable.getWriter();
  const fed = writer
    .write(packed.slice())
    .then(() => writer.close())
    .then(
      () => true,
      () => false,
    );
  const reader = stream.readable.getReader();
  const nothing = { done: true as const, value: undefined, damaged: true };
  for (;;) {
    const piece = await reader.read().then(
      (read) => ({ ...read, damaged: false }),
      () => nothing,
    );
    if (piece.damaged) return 'damaged';
    if (piece.done || piece.value === undefined) return (await fed) ? true : 'damaged';
    if (!take(piece.value)) {
      await reader.cancel().then(
        () => true,
        () => false,
      );
      return false;
    }
  }
}

function columnNumber(letters: string): number {
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
}
