/*
 * Bytes → text: UTF-8 and UTF-16 with or without a mark, else Windows-1252 with a note.
 * Invariant: every text that comes out is well formed; a file that is no text is refused.
 * Not here: cells and rows (read-delimited.ts).
 * Read next: read-delimited.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';

export interface DecodedText {
  readonly text: string;
  readonly notes: readonly string[];
}

/** More odd control characters than this share of the text, and it is no list. */
const CONTROL_SHARE = 0.005;

export function decodeText(bytes: Uint8Array): Result<DecodedText> {
  const encoding = encodingOf(bytes);
  const text = new TextDecoder(encoding.label).decode(bytes);
  if (isBinary(text)) {
    return failed({
      code: 'file-is-binary',
      sentence:
        'The file is not a text that can be read as a list. Save the list as CSV (UTF-8) or XLSX and upload that.',
    });
  }
  return ok({ text, notes: encoding.note === undefined ? [] : [encoding.note] });
}

interface Encoding {
  readonly label: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';
  readonly note?: string;
}

function encodingOf(bytes: Uint8Array): Encoding {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { label: 'utf-16le' };
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { label: 'utf-16be' };
  const wide = wideWithoutMark(bytes);
  if (wide !== null) return { label: wide, note: 'The text has no mark of its encoding and was read as UTF-16.' };
  if (isUtf8(bytes)) return { label: 'utf-8' };
  return {
    label: 'windows-1252',
    note: 'The text is not UTF-8 and was read as Windows-1252; check letters such as ä, é, ñ and signs such as ° and ½.',
  };
}

/** Latin text in UTF-16 has a zero in nearly every second byte. */
function wideWithoutMark(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  const sample = bytes.subarray(0, 4096);
  if (sample.length < 4) return null;
  const zeros = [0, 0];
  for (const [index, byte] of sample.entries()) if (byte === 0) zeros[index % 2] = (zeros[index % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros;
  const half = sample.length / 2;
  if (odd > half * 0.6 && even < half * 0.1) return 'utf-16le';
  return even > half * 0.6 && odd < half * 0.1 ? 'utf-16be' : null;
}

/** Well-formed UTF-8, by decoding with replacement and counting what was replaced; a replacement in the text itself is no fault. */
function isUtf8(bytes: Uint8Array): boolean {
  const replaced = new TextDecoder('utf-8').decode(bytes).split('\ufffd').length - 1;
  return replaced <= countReplacementBytes(bytes);
}

function countReplacementBytes(bytes: Uint8Array): number {
  let count = 0;
  for (let at = bytes.indexOf(0xef); at !== -1; at = bytes.indexOf(0xef, at + 1)) {
    if (bytes[at + 1] === 0xbf && bytes[at + 2] === 0xbd) count += 1;
  }
  return count;
}

function isBinary(text: string): boolean {
  let odd = 0;
  for (let index = 0; index < text.length; index += 1) {
    const code = text.charCodeAt(index);
    if (code < 32 && code !== 9 && code !== 10 && code !== 13 && code !== 11 && code !== 12) odd += 1;
  }
  return odd > Math.max(2, text.length * CONTROL_SHARE);
}
