/*
 * English texts with gaps, found again in finished sentences.
 * Invariant: a reading put together again is the sentence, letter by letter; the wording with most fixed letters comes first.
 * Not here: what stands in a gap (told-in.ts).
 * Read next: told-in.ts.
 */
export interface Patterns {
  readonly exact: ReadonlyMap<string, string>;
  readonly gapped: readonly Pattern[];
}

interface Pattern {
  readonly wording: string;
  readonly fits: RegExp;
  /** The longest fixed part, to look for first. */
  readonly mark: string;
  /** Which gap of the wording each gap of the text is. */
  readonly order: readonly number[];
  readonly quoted: ReadonlySet<number>;
  readonly bracketed: ReadonlySet<number>;
  /** It ends with a gap. */
  readonly isOpen: boolean;
  readonly weight: number;
}

export interface Reading {
  readonly wording: string;
  /** By the numbers of the wording. */
  readonly gaps: readonly Gap[];
}

export interface Gap {
  readonly text: string;
  /** Between quotation marks: somebody's own words. */
  readonly isQuoted: boolean;
  /** With nothing after it, or in brackets: only there may it hold more than one sentence. */
  readonly isLast: boolean;
}

const GAP = /\{(\d)\}/;
const TAG_FIRST = '{0}: ';

export function patternsOf(texts: Readonly<Record<string, string>>): Patterns {
  const entries = Object.entries(texts).flatMap(([english, wording]) => [
    [english, wording] as const,
    ...withoutTag(english, wording),
  ]);
  return {
    exact: new Map(entries.filter(([english]) => !GAP.test(english))),
    gapped: entries
      .filter(([english]) => GAP.test(english))
      .map(([english, wording]) => patternOf(english, wording))
      .toSorted((a, b) => b.weight - a.weight),
  };
}

/** What is said of a line by its tag is said of a class of equal lines without it, with a capital letter. */
function withoutTag(english: string, wording: string): readonly (readonly [string, string])[] {
  if (!english.startsWith(TAG_FIRST) || !wording.startsWith(TAG_FIRST)) return [];
  return [[capital(english.slice(TAG_FIRST.length)), capital(wording.slice(TAG_FIRST.length))]];
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

function patternOf(english: string, wording: string): Pattern {
  const parts = english.split(/\{\d\}/);
  const order = [...english.matchAll(/\{(\d)\}/g)].map(([, at]) => Number(at));
  const literal = parts.map((part) => part.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&'));
  return {
    wording,
    fits: new RegExp(`^${literal.join('(.*?)')}$`, 'su'),
    mark: parts.reduce((longest, part) => (part.length > longest.length ? part : longest), ''),
    order,
    quoted: new Set([...english.matchAll(/“\{(\d)\}”/g)].map(([, at]) => Number(at))),
    bracketed: new Set([...english.matchAll(/\(\{(\d)\}\)/g)].map(([, at]) => Number(at))),
    isOpen: parts.at(-1) === '',
    weight: parts.reduce((sum, part) => sum + part.length, 0),
  };
}

export function* readings(text: string, { exact, gapped }: Patterns): Generator<Reading> {
  const whole = exact.get(text);
  if (whole !== undefined) yield { wording: whole, gaps: [] };
  for (const { fits, mark, order, quoted, bracketed, isOpen, wording } of gapped) {
    if (!text.includes(mark)) continue;
    const found = fits.exec(text);
    if (found === null) continue;
    const gaps: Gap[] = [];
    order.forEach((at, index) => {
      gaps[at] = {
        text: found[index + 1] ?? '',
        isQuoted: quoted.has(at),
        isLast: (isOpen && index === order.length - 1) || bracketed.has(at),
      };
    });
    if (gaps.every((gap) => gap.text.length < text.length)) yield { wording, gaps };
  }
}
