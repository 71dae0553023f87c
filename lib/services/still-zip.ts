/*
 * Takes the moment of writing out of a ZIP archive, so that the same contents give the same bytes at any time.
 * Invariant: nothing but the time stamps of the entries changes; contents, names and checksums stay.
 * Not here: writing archives.
 * Read next: quote-files.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';

/** PKWARE application note 6.3: signatures and offsets, in bytes. */
const END = { signature: 0x06054b50, size: 22, entries: 10, directory: 16 } as const;
const ENTRY = { signature: 0x02014b50, size: 46, stamp: 12, name: 28, extra: 30, comment: 32, local: 42 } as const;
const LOCAL = { signature: 0x04034b50, stamp: 10 } as const;

/** 1 January 1980, midnight: the first moment the format knows. */
const STILL = 0x0021_0000;

export function stillZip(archive: Uint8Array): Buffer {
  const bytes = Buffer.from(archive);
  const end = bytes.length - END.size;
  invariant(
    end >= 0 && bytes.readUInt32LE(end) === END.signature,
    'The archive ends with its directory and no comment.',
  );
  let at = bytes.readUInt32LE(end + END.directory);
  for (let entry = 0; entry < bytes.readUInt16LE(end + END.entries); entry += 1) {
    invariant(bytes.readUInt32LE(at) === ENTRY.signature, 'The directory names one entry after another.');
    const local = bytes.readUInt32LE(at + ENTRY.local);
    invariant(bytes.readUInt32LE(local) === LOCAL.signature, 'The directory points at each entry.');
    bytes.writeUInt32LE(STILL, at + ENTRY.stamp);
    bytes.writeUInt32LE(STILL, local + LOCAL.stamp);
    at +=
      ENTRY.size +
      [ENTRY.name, ENTRY.extra, ENTRY.comment].reduce((sum, field) => sum + bytes.readUInt16LE(at + field), 0);
  }
  return bytes;
}
