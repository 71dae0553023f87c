/*
 * The order in which pieces go into a case, and how high its centre of mass then lies.
 * Invariant: no other order of the same layers lies lower.
 * Not here: which pieces share a case (fewest-cases.ts).
 * Read next: pack-cases.ts.
 */
import type { CaseSize } from '#lib/equipment/model.ts';
import { type Metres, metres } from '#lib/units/quantity.ts';
import { volumeOf } from './load.ts';
import type { Piece } from './piece.ts';

export interface LaidIn {
  /** From the bottom up. */
  readonly order: readonly Piece[];
  /** Height above the floor of the inside. */
  readonly centre: Metres;
}

/** Each piece as a layer over the whole floor; denser layers below, which by exchange of neighbours is the lowest. */
export function layIn({ pieces, inside }: { readonly pieces: readonly Piece[]; readonly inside: CaseSize }): LaidIn {
  const floor = inside.length * inside.width;
  const order = [...pieces].sort(
    (a, b) =>
      density(b) - density(a) ||
      b.mass - a.mass ||
      compareText(a.number, b.number) ||
      compareText(a.serial ?? '', b.serial ?? ''),
  );
  let height = 0;
  let moment = 0;
  let mass = 0;
  for (const piece of order) {
    const layer = volumeOf(piece.size) / floor;
    moment += piece.mass * (height + layer / 2);
    mass += piece.mass;
    height += layer;
  }
  return { order, centre: metres(mass === 0 ? 0 : moment / mass) };
}

function density({ mass, size }: Piece): number {
  return mass / volumeOf(size);
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
