/*
 * Which of several dated things holds on a day: the one that began last.
 * Invariant: before the first of them nothing of them holds, and the opening one does.
 * Not here: which day a price asks about (the first day of hire: lib/services/house/house-facts.ts).
 * Read next: model.ts.
 */
import type { IsoDate } from '#lib/kernel/date-range.ts';

interface Dated {
  readonly starts_on: IsoDate;
}

export function heldOn<Card extends Dated>(cards: readonly Card[], day: IsoDate): Card | undefined {
  let held: Card | undefined;
  for (const card of cards) {
    if (card.starts_on <= day && (held === undefined || card.starts_on >= held.starts_on)) held = card;
  }
  return held;
}
