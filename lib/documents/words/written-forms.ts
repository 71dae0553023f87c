/*
 * Words with dates and figures as papers keep them, written in the form that a reader is used to.
 * Invariant: names, quoted words and citations stay as they are written: a tag, a part number or a clause is no figure.
 * Not here: units (units/format-quantity.ts) and whole papers (../papers/paper-forms.ts).
 * Read next: person-forms.ts, print-values.ts.
 */

import { type DateForm, type DecimalMark, dateIn } from './person-forms.ts';
import { MONTHS } from './print-values.ts';

/** What parts thousands, then what stands before the decimals. */
export const NUMBER_FORMS = ['space-point', 'space-comma', 'comma-point', 'point-comma'] as const;
export type NumberForm = (typeof NUMBER_FORMS)[number];

export interface WrittenForms {
  readonly dates: DateForm;
  readonly numbers: NumberForm;
  /** Commas between thousands, as sentences have them, are rewritten too; absent in what was frozen before they were. */
  readonly commas?: 'rewritten';
}

/** A person chooses the decimal mark alone; spaces part the thousands (ISO 80000-1, 7.3.1). */
export function numbersWith(mark: DecimalMark): NumberForm {
  return mark === 'comma' ? 'space-comma' : 'space-point';
}

export function decimalMark(numbers: NumberForm): '.' | ',' {
  return numbers.endsWith('comma') ? ',' : '.';
}

/** How words are rewritten, made once for many words; `names` are left alone wherever they stand. */
export function writer({
  forms,
  names = [],
}: {
  readonly forms: WrittenForms;
  readonly names?: readonly string[];
}): (words: string) => string {
  const source = forms.commas === undefined ? PATTERN.source : COMMAS_TOO;
  const all = new RegExp(source, 'gu');
  const plain = (words: string) => rewritten(words, { forms, pattern: all });
  const kept = [...new Set(names)].filter((name) => plain(name) !== name).toSorted((a, b) => b.length - a.length);
  if (kept.length === 0) return plain;
  const literal = kept.map((name) => name.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&')).join('|');
  const pattern = new RegExp(`(?<![\\w.])(?:${literal})(?![\\w])|${source}`, 'gu');
  return (words) => rewritten(words, { forms, pattern });
}

const DATE = String.raw`(?<![\w.-])(?<day>\d{1,2}) (?<month>${MONTHS.join('|')}) (?<year>\d{4})(?!\d)`;
const ISO_DATE = String.raw`(?<![\w-])(?<iso>\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01]))(?![\w-])`;
const NUMBER = String.raw`(?<![\w.,]|[\w)]-)(?<whole>\d{1,3}(?: \d{3})+(?![\d])|\d+)(?:\.(?<part>\d+))?(?![\w]|\.\d| \d{3}\.\d)`;
const PATTERN = new RegExp(`“[^”]*”|${DATE}|${ISO_DATE}|${NUMBER}`, 'gu');
/** `1,250 N·m` would read as one and a quarter where the comma is the decimal mark. German quotation marks hold quoted words too. */
const COMMAS_TOO = `„[^“]*“|“[^”]*”|${DATE}|${ISO_DATE}|(?<![\\w.,])(?<grouped>\\d{1,3}(?:,\\d{3})+)(?:\\.(?<fraction>\\d+))?(?![\\w,])|${NUMBER}`;

/** What a number after it belongs to: a place in a document, a thread, the clauses of a standard. */
const CITED =
  /(?:\b(?:sections?|clauses?|tables?|eqs?\.?|equations?|figures?|figs?\.?|annex|chapters?|parts?|articles?|rules?|versions?|editions?|appendix|no\.)|§) ?$|\b(?:M|Tr ?)\d+(?:\.\d+)?×$|\b(?:ISO|IEC|EN|API|ASME|NIST|BS|DIN|MSS|UBL)\b[\w :/-]*(?:, | )$/iu;

interface Rewriting {
  readonly forms: WrittenForms;
  readonly pattern: RegExp;
}

function rewritten(words: string, { forms, pattern }: Rewriting): string {
  return words.replace(pattern, (whole: string, ...rest: readonly unknown[]) => {
    const found = groupsOf(rest);
    if (found.year !== undefined) return dateIn(isoOf(found), forms.dates);
    if (found.iso !== undefined) return dateIn(found.iso, forms.dates);
    if (found.grouped !== undefined)
      return numberIn(found.grouped.replaceAll(',', ' '), { part: found.fraction, before: '', forms, all: true });
    if (found.whole === undefined) return whole;
    const at = rest.findIndex((value) => typeof value === 'number');
    const before = words.slice(0, Number(rest[at]));
    return CITED.test(before) ? whole : numberIn(found.whole, { ...found, before, forms, all: whole === words });
  });
}

type Found = Readonly<
  Partial<Record<'day' | 'month' | 'year' | 'iso' | 'whole' | 'part' | 'grouped' | 'fraction', string>>
>;

function groupsOf(rest: readonly unknown[]): Found {
  const last = rest.at(-1);
  return typeof last === 'object' && last !== null ? last : {};
}

function isoOf({ day = '', month = '', year = '' }: Found): string {
  const number = MONTHS.indexOf(month) + 1;
  return `${year}-${String(number).padStart(2, '0')}-${day.padStart(2, '0')}`;
}

interface NumberFound {
  readonly part?: string | undefined;
  readonly before: string;
  readonly forms: WrittenForms;
  /** The words are this number and nothing else. */
  readonly all: boolean;
}

/** Groups of three without decimals may be two numbers side by side, unless they stand alone or follow a currency. */
function numberIn(whole: string, { part, before, forms, all }: NumberFound): string {
  const grouped = part !== undefined || all || /\b[A-Z]{3} [−-]?$/.test(before);
  const mark = decimalMark(forms.numbers);
  const between = { 'space-point': ' ', 'space-comma': ' ', 'comma-point': ',', 'point-comma': '.' }[forms.numbers];
  return `${grouped ? whole.replaceAll(' ', between) : whole}${part === undefined ? '' : `${mark}${part}`}`;
}
