/*
 * Sentences with quantities in them, told in SI and in US customary units from the same exact value.
 * Invariant: each unit system's text is made from the value itself, never from the other system's rounded text.
 * Not here: numbers in tables (format-quantity.ts) and what the sentences say (rules, duty, kits).
 * Read next: format-quantity.ts, us-beside.ts.
 */
import type { UnitSystem } from './format-quantity.ts';
import { besideIt } from './us-beside.ts';

/** A sentence as it is kept: SI always, US customary where that reads differently. */
export interface Told {
  readonly sentence: string;
  readonly inUs?: string;
}

/** Private-use marks: they live between the making of a sentence and `tell`, and never leave it. */
const OPEN = '\uE000';
const BETWEEN = '\uE001';
const CLOSE = '\uE002';
const FIGURE = new RegExp(`${OPEN}([^${OPEN}-${CLOSE}]*)${BETWEEN}([^${OPEN}-${CLOSE}]*)${CLOSE}`, 'g');

/** One quantity inside a sentence, in both texts; `tell` takes them apart. */
export function figure({ si, us }: { readonly si: string; readonly us: string }): string {
  return si === us ? si : `${OPEN}${si}${BETWEEN}${us}${CLOSE}`;
}

/** Takes a sentence made with `figure` apart into what is kept. */
export function tell(marked: string): Told {
  if (!marked.includes(OPEN)) return { sentence: marked };
  return { sentence: marked.replace(FIGURE, '$1'), inUs: marked.replace(FIGURE, '$2') };
}

/** More words at the end of a sentence, in both texts. */
export function tellMore<T extends Told>(told: T, more: string): T {
  const { sentence, inUs } = tell(more);
  return {
    ...told,
    sentence: `${told.sentence}${sentence}`,
    ...(told.inUs === undefined && inUs === undefined
      ? {}
      : { inUs: `${told.inUs ?? told.sentence}${inUs ?? sentence}` }),
  };
}

/** The sentence in a unit system; one that was made without `figure` keeps its SI figures, with US customary ones beside. */
export function sentenceIn(told: Told, system: UnitSystem): string {
  return system === 'us' ? (told.inUs ?? besideIt(told.sentence)) : told.sentence;
}
