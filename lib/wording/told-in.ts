/*
 * Sentences and words of rules, duties, prices and papers in another language: the English text with its gaps is the id, what stands in a gap is a fact.
 * Invariant: a text is told whole in one language; where one word of it is unknown it stays English, never half.
 * Not here: the texts (german/; `{0!}` is a gap that stays as it is), dates and figures in a language's form (lib/documents/words/written-forms.ts).
 * Read next: pattern.ts, german/all-sentences.ts.
 */
import { GERMAN_SENTENCES } from './german/all-sentences.ts';
import { factWords } from './german/fact-words.ts';
import type { Language } from './language.ts';
import { type Patterns, patternsOf, readings } from './pattern.ts';

export interface ToldFrom {
  readonly language: Language;
  /** What somebody wrote, and what is named: stays as it is wherever it stands. */
  readonly names?: Iterable<string>;
  /** What the house calls things, with its own words for them in the language. */
  readonly own?: ReadonlyMap<string, string>;
}

/** A text in the language, and whether it could be told in it. */
export interface ToldText {
  readonly text: string;
  readonly language: Language;
}

export interface Teller {
  readonly tell: (english: string) => string;
  readonly told: (english: string) => ToldText;
}

const SAME: Teller = { tell: (english) => english, told: (text) => ({ text, language: 'en' }) };
/** Sentences of one text that may belong to one wording. */
const MOST_TOGETHER = 6;

let german: Patterns | undefined;

/** How texts are told, made once for many of them. */
export function tellerFor({ language, names = [], own = new Map() }: ToldFrom): Teller {
  if (language === 'en') return SAME;
  german ??= patternsOf(GERMAN_SENTENCES);
  const known: Known = {
    patterns: german,
    names: new Set([...names].filter((name) => !own.has(name))),
    own,
    kept: new Map(),
  };
  const told = (english: string): ToldText => {
    const parts = tellAll(english, known);
    const whole = parts.every(({ language: one }) => one === language);
    const text = parts.map((part) => (part.language === language ? germanMarks(part.text) : part.text)).join(' ');
    return { text, language: whole ? language : 'en' };
  };
  return { tell: (english) => told(english).text, told };
}

/** Quotation marks as German has them, also round what somebody wrote. */
function germanMarks(text: string): string {
  return text.replace(/„[^“]*“|“([^”]*)”/g, (whole, quoted: string | undefined) =>
    quoted === undefined ? whole : `„${quoted}“`,
  );
}

interface Known {
  readonly patterns: Patterns;
  readonly names: ReadonlySet<string>;
  readonly own: ReadonlyMap<string, string>;
  readonly kept: Map<string, string | null>;
}

/** The whole text as one, or sentence by sentence, as many together as there is a wording for. */
function tellAll(english: string, known: Known): readonly ToldText[] {
  const whole = tellOne(english, known);
  if (whole !== null) return [{ text: whole, language: 'de' }];
  const sentences = english.split(/(?<=[.?!]) (?=[\p{Lu}\d▲“(])|(?<=[)”]) (?=\p{Lu})/u);
  const told: ToldText[] = [];
  for (let at = 0; at < sentences.length; ) {
    const longest = Array.from({ length: Math.min(MOST_TOGETHER, sentences.length - at) }, (_, less) => less)
      .map((less) => Math.min(sentences.length, at + MOST_TOGETHER) - less)
      .map((end) => ({ end, text: tellOne(sentences.slice(at, end).join(' '), known) }))
      .find(({ text }) => text !== null);
    told.push(
      longest?.text == null ? { text: sentences[at] ?? '', language: 'en' } : { text: longest.text, language: 'de' },
    );
    at = longest?.end ?? at + 1;
  }
  return told;
}

/** Null where a word of it has no wording. A gap is always shorter than what it stands in, so that this ends. */
function tellOne(english: string, known: Known): string | null {
  const before = known.kept.get(english);
  if (before !== undefined) return before;
  const told =
    named(english, known) ??
    worded(english, known) ??
    capitalised(english, known) ??
    listed(english, known) ??
    factWords(english);
  known.kept.set(english, told);
  return told;
}

function named(english: string, { names, own }: Known): string | null {
  if (english === '' || names.has(english)) return english;
  const whole = own.get(english);
  if (whole !== undefined) return whole;
  // A piece of equipment by its name and number.
  const piece = /^(?<name>.+) (?<number>\(?[A-Z]{1,2}-\d+\)?)$/.exec(english)?.groups;
  const name = own.get(piece?.name ?? '');
  if (name !== undefined) return `${name} ${piece?.number}`;
  // Or before its serial numbers.
  const found = [...own].find(
    ([one]) => english.startsWith(`${one} `) && isNames(english.slice(one.length + 1), names),
  );
  return found === undefined ? null : `${found[1]}${english.slice(found[0].length)}`;
}

function isNames(text: string, names: ReadonlySet<string>): boolean {
  return text.split(', ').every((part) => names.has(part));
}

function worded(english: string, known: Known): string | null {
  for (const { wording, gaps } of readings(english, known.patterns)) {
    const filled = gaps.map(({ text, isQuoted, isLast }, at) => {
      if (wording.includes(`{${at}!}`)) return text;
      if (isQuoted) return known.patterns.exact.get(text) ?? text;
      return isLast || !SENTENCE_ENDS.test(text) || known.names.has(text) ? gapWords(text, known) : null;
    });
    if (filled.every((words) => words !== null))
      return wording.replace(/\{(\d)!?\}/g, (_, at) => filled[Number(at)] ?? '');
  }
  return null;
}

/** A term at the beginning of a line, alone, before its figure or before what a list says: `Stem torsion 120 N·m`. */
function capitalised(english: string, { patterns }: Known): string | null {
  const { words = english, figure = '' } =
    /^(?<words>[^\d“]+?)(?<figure> (?:[\d.,…]+ \S+|“[^”]*”))$/.exec(english)?.groups ?? {};
  const term = patterns.exact.get(words) ?? patterns.exact.get(`${words.charAt(0).toLowerCase()}${words.slice(1)}`);
  return term === undefined ? null : `${term.charAt(0).toUpperCase()}${term.slice(1)}${figure}`;
}

/** A gap may begin or end with the space that parts it from what it may be left out of. */
function gapWords(gap: string, known: Known): string | null {
  const inner = gap.trim();
  const told = tellOne(inner, known);
  return told === null ? null : gap.replace(inner, () => told);
}

const SENTENCE_ENDS = /(?<=[.?!]) (?=\p{Lu})/u;
const JOINED = [
  [SENTENCE_ENDS, ' '],
  ['; ', '; '],
  [' · ', ' · '],
  [', ', ', '],
  [' and ', ' und '],
  [' or ', ' oder '],
  [' to ', ' bis '],
] as const;

function listed(english: string, known: Known): string | null {
  for (const [mark, words] of JOINED) {
    const apart = english.split(mark);
    if (apart.length < 2) continue;
    const parts = apart.map((part) => gapWords(part, known));
    if (parts.every((part) => part !== null)) return parts.join(words);
  }
  return null;
}
