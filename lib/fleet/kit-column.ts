/*
 * A column of the program that says what a crew carries.
 * Invariant: the columns of one item and crew rise by needed counts, each adding its step to the next lower one.
 * Not here: which columns there are (build-model.ts).
 * Read next: build-model.ts, busy-crews.ts.
 */

/** A piece, or the pieces between two needed counts, that a crew carries or not. */
export interface KitColumn {
  readonly column: number;
  readonly crew: number;
  readonly item: number;
  /** Carrying it means at least so many of the item. */
  readonly count: number;
  /** Pieces it adds to the next lower one. */
  readonly step: number;
}
