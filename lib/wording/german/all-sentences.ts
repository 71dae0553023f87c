/*
 * Every German wording in one table.
 * Invariant: no English text has two wordings.
 * Not here: finding them (../told-in.ts).
 * Read next: ../pattern.ts.
 */
import { CHANGE_WORDS } from './change-words.ts';
import { CREW_DAY_SENTENCES } from './crew-day-sentences.ts';
import { DRAWING_WORDS } from './drawing-words.ts';
import { DUTY_SENTENCES } from './duty-sentences.ts';
import { KIT_SENTENCES } from './kit-sentences.ts';
import { LIST_SENTENCES } from './list-sentences.ts';
import { PAPER_WORDS } from './paper-words.ts';
import { PICTURE_WORDS } from './picture-words.ts';
import { PLACE_SENTENCES } from './place-sentences.ts';
import { PRICE_SENTENCES } from './price-sentences.ts';
import { RETURN_WORDS } from './return-words.ts';
import { RULE_SENTENCES } from './rule-sentences.ts';
import { SITE_WORDS } from './site-words.ts';
import { TERMS } from './terms.ts';

export const GERMAN_TABLES: readonly Readonly<Record<string, string>>[] = [
  TERMS,
  RULE_SENTENCES,
  PLACE_SENTENCES,
  DUTY_SENTENCES,
  PRICE_SENTENCES,
  PAPER_WORDS,
  CHANGE_WORDS,
  SITE_WORDS,
  CREW_DAY_SENTENCES,
  KIT_SENTENCES,
  DRAWING_WORDS,
  PICTURE_WORDS,
  LIST_SENTENCES,
  RETURN_WORDS,
];

export const GERMAN_SENTENCES: Readonly<Record<string, string>> = Object.assign({}, ...GERMAN_TABLES);
