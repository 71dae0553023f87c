/*
 * Says what a file is by its first bytes, and refuses with a remedy what is no list that can be read.
 * Invariant: the file's name decides nothing; every refusal has a stable code and says what to do.
 * Not here: reading it (read-delimited.ts, read-workbook.ts).
 * Read next: read-table.ts.
 */
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';

export type FileKind = 'text' | 'workbook archive';

const SAVE_AS = 'Open it in a spreadsheet program and save it as XLSX or CSV, then upload that.';
const MEGABYTE = 1024 * 1024;

const SIGNATURES: readonly (readonly [bytes: readonly number[], code: string, what: string])[] = [
  [[0x25, 0x50, 0x44, 0x46], 'file-is-pdf', 'a PDF document'],
  [[0x89, 0x50, 0x4e, 0x47], 'file-is-picture', 'a picture'],
  [[0xff, 0xd8, 0xff], 'file-is-picture', 'a picture'],
  [[0x47, 0x49, 0x46, 0x38], 'file-is-picture', 'a picture'],
  [[0x1f, 0x8b], 'file-is-archive', 'a compressed archive'],
  [[0x37, 0x7a, 0xbc, 0xaf], 'file-is-archive', 'a compressed archive'],
  [[0x52, 0x61, 0x72, 0x21], 'file-is-archive', 'a compressed archive'],
  [[0x7b, 0x5c, 0x72, 0x74, 0x66], 'file-is-document', 'a text document with layout'],
  [[0x7f, 0x45, 0x4c, 0x46], 'file-is-binary', 'a program'],
  [[0x4d, 0x5a, 0x90], 'file-is-binary', 'a program'],
];
/** Signature of a compound file: old workbooks, and new ones behind a password. [MS-CFB] section 2.2. */
const COMPOUND = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1] as const;
/** The stream that holds a workbook behind a password. [MS-OFFCRYPTO] section 1.3.2. */
const ENCRYPTED_STREAM = 'EncryptedPackage';

export function sniffFile(bytes: Uint8Array): Result<FileKind> {
  if (bytes.length === 0) {
    return failed({
      code: 'file-empty',
      sentence: 'The file is empty. Check that it was saved before it was uploaded.',
    });
  }
  if (bytes.length > LIMITS.list_bytes) {
    return failed({
      code: 'file-too-large',
      sentence: `The file is ${(bytes.length / MEGABYTE).toFixed(1)} MB; at most ${LIMITS.list_bytes / MEGABYTE} MB are read. Take pictures and other sheets out, or split the list.`,
    });
  }
  if (startsWith(bytes, [0x50, 0x4b, 0x03, 0x04]) || startsWith(bytes, [0x50, 0x4b, 0x05, 0x06]))
    return ok('workbook archive');
  if (startsWith(bytes, COMPOUND)) return compoundRefusal(bytes);
  const found = SIGNATURES.find(([signature]) => startsWith(bytes, signature));
  if (found) return failed({ code: found[1], sentence: `The file is ${found[2]}, not a list. ${SAVE_AS}` });
  return refuseMarkup(bytes) ?? ok('text');
}

function compoundRefusal(bytes: Uint8Array): Result<never> {
  if (holdsWideText(bytes, ENCRYPTED_STREAM)) {
    return failed({
      code: 'file-is-protected',
      sentence:
        'The workbook is protected by a password. Take the password off in a spreadsheet program, save it, and upload that.',
    });
  }
  return failed({
    code: 'file-is-old-workbook',
    sentence: `The file is a workbook of the old kind (.xls), which is not read. ${SAVE_AS}`,
  });
}

function refuseMarkup(bytes: Uint8Array): Result<never> | null {
  const start = asciiStart(bytes).toLowerCase();
  if (
    /^\s*(?:<!doctype html|<html|<head|<body|<table|<meta|<style|<!--)/.test(start) ||
    (start.includes('<html') && start.includes('<table'))
  ) {
    return failed({ code: 'file-is-html', sentence: `The file is a web page, whatever its name says. ${SAVE_AS}` });
  }
  if (/^\s*<\?xml/.test(start) && start.includes('workbook')) {
    return failed({
      code: 'file-is-xml-workbook',
      sentence: `The file is a workbook saved as XML, which is not read. ${SAVE_AS}`,
    });
  }
  if (/^\s*<\?xml|^\s*<svg/.test(start))
    return failed({ code: 'file-is-xml', sentence: `The file is XML, not a list. ${SAVE_AS}` });
  return null;
}

function startsWith(bytes: Uint8Array, signature: readonly number[]): boolean {
  return signature.every((byte, index) => bytes[index] === byte);
}

/** The first bytes as plain letters; byte order marks and the gaps of UTF-16 fall out. */
function asciiStart(bytes: Uint8Array): string {
  return String.fromCharCode(...bytes.slice(0, 2048).filter((byte) => byte > 0 && byte < 128));
}

function holdsWideText(bytes: Uint8Array, text: string): boolean {
  const wide = [...text].flatMap((letter) => [letter.charCodeAt(0), 0]);
  const [first = 0] = wide;
  for (let at = bytes.indexOf(first); at !== -1; at = bytes.indexOf(first, at + 1)) {
    if (wide.every((byte, index) => bytes[at + index] === byte)) return true;
  }
  return false;
}
