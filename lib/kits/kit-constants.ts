/*
 * Sizes of the search for equipment, and how its figures are rounded.
 * Invariant: nothing here changes what is allowed, only how far is looked.
 * Not here: the house's figures for working equipment (equipment/working-constants.ts).
 * Read next: cores/core-figures.ts.
 */
import { type Ratio, ratio, type Seconds, seconds } from '#lib/units/quantity.ts';

/** Highest number of adapters in a set that covers a range. */
export const LARGEST_COVER = 3;
/** Covering sets kept for one core, cheapest in parts first. */
export const COVERS_KEPT = 60;

export const wholeSeconds = (value: number): Seconds => seconds(Math.round(value));
export const share = (value: number): Ratio => ratio(Math.min(1, Math.max(0, value)));
