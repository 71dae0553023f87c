/*
 * Text made comparable: case, accents, spaces and signs out of the way; and which texts mean "not known".
 * Invariant: pure and total; nothing here guesses a value.
 * Not here: words and their meaning (choice-words.ts, recognise-kind.ts).
 * Read next: match-header.ts.
 */
import { plainFractions } from '#lib/units/parse-number.ts';

const PRINTABLE_ASCII = /^[\x20-\x5e\x60-\x7e]*$/;

/** Lower case, no accents, single spaces. */
export function plainText(text: string): string {
  if (PRINTABLE_ASCII.test(text)) return text.toLowerCase().replace(/ {2,}/g, ' ').trim();
  return plainFractions(text)
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/ß/g, 'ss')
    .toLowerCase()
    .replace(/[\s\u00a0_]+/g, ' ')
    .trim();
}

/** Letters and digits only, for headers: `Turns_to-Close` and `turnstoclose` are one. */
export function headerKey(text: string): string {
  return plainText(text).replace(/[^\p{L}\p{N}]/gu, '');
}

const MISSING: ReadonlySet<string> = new Set([
  '',
  'null',
  '<null>',
  '(null)',
  'nil',
  'n/a',
  '#n/a',
  'na',
  'n.a.',
  'n.a',
  'nan',
  'none given',
  '-',
  '--',
  '---',
  '–',
  '—',
  '?',
  '??',
  '???',
  '.',
  'unknown',
  'unk',
  'not known',
  'unbekannt',
  'inconnu',
  'inconnue',
  'desconocido',
  'desconhecido',
  'sconosciuto',
  'tbc',
  'tbd',
  'tba',
  '(blank)',
  'not available',
  'not given',
  'no data',
  'k.a.',
  'xxx',
  'неизвестно',
  '未知',
]);

/** Spaces round the longest of them allowed for. */
const LONGEST_MISSING = 24;

/** Whether a cell says that the value is not known, in one of the many ways people write that. */
export function isMissing(text: string | undefined): boolean {
  return text === undefined || (text.length <= LONGEST_MISSING && MISSING.has(plainText(text)));
}

/** A cell as it is kept: control characters out, spaces and line breaks single. */
export function tidyCell(text: string): string {
  if (PRINTABLE_ASCII.test(text)) return text.includes('  ') ? text.replace(/ {2,}/g, ' ').trim() : text.trim();
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out.
      .replace(/[\u0000-\u0008\u000b-\u001f\u007f\ufeff\u200b-\u200d]/g, ' ')
      .replace(/[\s\u00a0]+/g, ' ')
      .trim()
  );
}

/** A text for a sentence: quoted and cut. */
export function quoted(text: string): string {
  return `“${text.length > 60 ? `${text.slice(0, 57)}…` : text}”`;
}

/** Edit distance up to `limit`; more than that answers `limit + 1`. */
export function editDistance(pair: { readonly a: string; readonly b: string; readonly limit: number }): number {
  const { a, b, limit } = pair;
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let previous = Array.from({ length: b.length + 1 }, (_unused, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const current = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = (previous[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      current.push(Math.min(change, (previous[j] ?? 0) + 1, (current[j - 1] ?? 0) + 1));
    }
    if (current.every((changes) => changes > limit)) return limit + 1;
    previous = current;
  }
  return Math.min(previous[b.length] ?? limit + 1, limit + 1);
}
