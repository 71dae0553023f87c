/*
 * A text in the language of the reader, with what it names filled in.
 * Invariant: keys are typed; every placeholder of a text is filled, and nothing else is; a number has the language's decimal mark.
 * Not here: the texts (english-….ts, german-….ts).
 * Read next: language.ts, reason-words.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import { ENGLISH_HIRE } from './english-hire.ts';
import { ENGLISH_QUESTIONS } from './english-questions.ts';
import { ENGLISH_REASONS } from './english-reasons.ts';
import { ENGLISH_SCREENS } from './english-screens.ts';
import { GERMAN_HIRE } from './german-hire.ts';
import { GERMAN_QUESTIONS } from './german-questions.ts';
import { GERMAN_REASONS } from './german-reasons.ts';
import { GERMAN_SCREENS } from './german-screens.ts';
import type { Language } from './language.ts';

const ENGLISH = { ...ENGLISH_SCREENS, ...ENGLISH_QUESTIONS, ...ENGLISH_REASONS, ...ENGLISH_HIRE };
export type WordingKey = keyof typeof ENGLISH;

export const TEXTS: Readonly<Record<Language, Readonly<Record<WordingKey, string>>>> = {
  en: ENGLISH,
  de: { ...GERMAN_SCREENS, ...GERMAN_QUESTIONS, ...GERMAN_REASONS, ...GERMAN_HIRE },
};

export type Named = Readonly<Record<string, string | number>>;

export function say(language: Language, key: WordingKey, named: Named = {}): string {
  return TEXTS[language][key].replace(/\{([a-z_]+)\}/g, (_, name: string) => {
    const value = named[name];
    invariant(value !== undefined, `The text ${key} names {${name}}, which was not given.`);
    return typeof value === 'number' && language === 'de' ? String(value).replace('.', ',') : String(value);
  });
}

/** A key put together from its parts; undefined where there is no such text. */
export function keyOf(...parts: readonly string[]): WordingKey | undefined {
  const key = parts.join('.');
  return isKey(key) ? key : undefined;
}

function isKey(key: string): key is WordingKey {
  return Object.hasOwn(ENGLISH, key);
}
