/*
 * Reasons to hand over, refusals and choices in the language of the reader.
 * Invariant: a code without a text of its own is told by the general one, never by its code.
 * Not here: when a reason holds (lib/questions/hand-over.ts).
 * Read next: wording.ts.
 */
import type { Language } from './language.ts';
import { keyOf, type Named, say } from './wording.ts';

export interface Reason {
  readonly code: string;
  readonly facts: Named;
}

export function reasonWords(language: Language, { code, facts }: Reason): string {
  const key = keyOf('reason', code);
  if (key === undefined) return say(language, 'refused.other');
  const service = facts.service;
  const named = {
    ...facts,
    ...(typeof service === 'string' ? { service: choiceWords(language, { column: 'service', text: service }) } : {}),
    ...(language === 'de' && facts.part_de !== undefined ? { part: facts.part_de } : {}),
  };
  return say(language, key, named);
}

export function refusalWords(language: Language, code: string): string {
  const own = keyOf('refused', code);
  return say(language, own ?? (FILE_UNREADABLE.test(code) ? 'refused.file-unreadable' : 'refused.other'));
}

/** A file that the reading of lists refuses for what it is: a picture, an archive, a page of the web. */
const FILE_UNREADABLE = /^file-/;

/** What an answer is called; the answer itself where it is a number. */
export function choiceWords(
  language: Language,
  { column, text }: { readonly column: string; readonly text: string },
): string {
  const key = column === 'anchor' && text === 'none' ? 'choice.nothing' : keyOf('choice', text);
  return key === undefined || NUMBERS.has(column) ? text : say(language, key);
}

/** Columns whose answers are numbers, of which some look like a choice. */
const NUMBERS: ReadonlySet<string> = new Set(['wheel_spokes', 'turns', 'gear_ratio', 'size', 'qty']);
