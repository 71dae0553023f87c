/*
 * Groups of a price's lines that a discount may be given on.
 * Invariant: the damage waiver belongs to none.
 * Not here: which kind of line belongs to which group, and what a discount comes to (discounts.ts).
 * Read next: discounts.ts.
 */
export const LINE_GROUPS = ['hire', 'goods', 'transport', 'people', 're-hired'] as const;
export type LineGroup = (typeof LINE_GROUPS)[number];

/** What each group is called in the name of a discount. */
export const GROUP_NAMES: Readonly<Record<LineGroup, string>> = {
  hire: 'hire',
  goods: 'sale and consumables',
  transport: 'transport',
  people: 'people and training',
  're-hired': 're-hired pieces',
};
