/*
 * One closed case on paper: which holder, and how many pieces of each type.
 * Invariant: a filling made here is under the holder's mass and room, and every type in it goes into the holder.
 * Not here: choosing fillings (first-fit.ts, fewest-cases.ts).
 * Read next: first-fit.ts.
 */
import type { Load } from './load.ts';

export interface Filling {
  /** Place of the holder in the load. */
  readonly holder: number;
  /** Pieces by type. */
  readonly counts: readonly number[];
}

/** How many more pieces of a type a holder takes that already carries so much. */
export function takesMore(
  load: Load,
  {
    holder,
    type,
    grams,
    volume,
  }: { readonly holder: number; readonly type: number; readonly grams: number; readonly volume: number },
): number {
  const room = load.holders[holder];
  const piece = load.types[type];
  if (room === undefined || piece === undefined || piece.goesInto[holder] !== true) return 0;
  const byMass = piece.grams === 0 ? Number.POSITIVE_INFINITY : Math.floor((room.grams - grams) / piece.grams);
  const byRoom = piece.volume === 0 ? Number.POSITIVE_INFINITY : Math.floor((room.volume - volume) / piece.volume);
  return Math.max(0, Math.min(byMass, byRoom));
}

/** The same pieces in the smallest holder that takes them: for one person where that can be. */
export function smallest(load: Load, filling: Filling): Filling {
  const sum = (of: (type: Load['types'][number]) => number): number =>
    load.types.reduce((all, type, at) => all + of(type) * (filling.counts[at] ?? 0), 0);
  const [grams, volume] = [sum((type) => type.grams), sum((type) => type.volume)];
  const fits = load.holders.findIndex(
    (holder, at) =>
      grams <= holder.grams &&
      volume <= holder.volume &&
      load.types.every(({ goesInto }, type) => (filling.counts[type] ?? 0) === 0 || goesInto[at] === true),
  );
  return fits < 0 ? filling : { ...filling, holder: fits };
}
