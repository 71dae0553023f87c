/*
 * A load in whole grams and cubic millimetres: alike pieces counted once, and every way of closing a case with what it may hold.
 * Invariant: pieces round up and room rounds down, so nothing is too heavy or too large by rounding.
 * Not here: which pieces share a case (first-fit.ts, fewest-cases.ts).
 * Read next: fewest-cases.ts.
 */
import type { CaseSize } from '#lib/equipment/model.ts';
import type { CaseKind } from './case-kinds.ts';
import type { Piece } from './piece.ts';

/** Share of a case's inside that odd shapes and foam leave for equipment. Common practice, no source. */
export const FILL = 0.7;

/** Pieces that packing cannot tell apart. */
export interface PieceType {
  readonly pieces: readonly Piece[];
  readonly grams: number;
  readonly volume: number;
  /** By holder: does it go through the opening and under the limit with nothing else. */
  readonly goesInto: readonly boolean[];
  /** No case for one person takes it, one for two does. */
  readonly needsTwo: boolean;
}

/** A kind of case under one lift limit. */
export interface Holder {
  readonly kind: CaseKind;
  readonly persons: 1 | 2;
  /** What may be put in. */
  readonly grams: number;
  readonly volume: number;
}

export interface Load {
  /** Those that need two persons first; among them and after them the heaviest first, and of two equally heavy the larger. */
  readonly types: readonly PieceType[];
  /** The smallest first, those for one person before those for two. */
  readonly holders: readonly Holder[];
  /** What no holder takes. */
  readonly loose: readonly Piece[];
}

export interface LoadInput {
  readonly pieces: readonly Piece[];
  readonly cases: readonly CaseKind[];
  /** Gross mass in kg that one person lifts. */
  readonly onePerson: number;
  /** Gross mass in kg that two lift; for cases with a piece that one person's case cannot hold. */
  readonly twoPersons: number;
}

export function loadOf({ pieces, cases, onePerson, twoPersons }: LoadInput): Load {
  const kinds = [...cases].sort((a, b) => volumeOf(a.size) - volumeOf(b.size));
  const ones = kinds.map((kind) => holder({ kind, persons: 1, limit: onePerson }));
  const twos = twoPersons > onePerson ? kinds.map((kind) => holder({ kind, persons: 2, limit: twoPersons })) : [];
  const holders = [...ones, ...twos];
  const alike = typesOf({ pieces, holders });
  // A case for two persons is opened by the piece that needs it, so such pieces come first.
  const types = [...alike.filter(({ needsTwo }) => needsTwo), ...alike.filter(({ needsTwo }) => !needsTwo)];
  return {
    types: types.filter(({ goesInto }) => goesInto.some(Boolean)),
    holders,
    loose: types.filter(({ goesInto }) => !goesInto.some(Boolean)).flatMap(({ pieces: alike }) => alike),
  };
}

function holder({
  kind,
  persons,
  limit,
}: {
  readonly kind: CaseKind;
  readonly persons: 1 | 2;
  readonly limit: number;
}): Holder {
  return {
    kind,
    persons,
    grams: Math.floor((limit - kind.mass) * 1000 + DUST),
    volume: Math.floor(volumeOf(kind.size) * FILL * 1e9 + DUST),
  };
}

/** Of a gram or a cubic millimetre; what a sum of decimals may be off by. */
const DUST = 1e-3;

function typesOf({
  pieces,
  holders,
}: {
  readonly pieces: readonly Piece[];
  readonly holders: readonly Holder[];
}): readonly PieceType[] {
  const alike = new Map<string, Piece[]>();
  for (const piece of [...pieces].sort(byWeight)) {
    const key = [piece.mass, ...edges(piece.size)].join(' ');
    alike.set(key, [...(alike.get(key) ?? []), piece]);
  }
  return [...alike.values()].flatMap((same) => {
    const [piece] = same;
    return piece === undefined ? [] : [typeOf({ piece, same, holders })];
  });
}

interface Alike {
  readonly piece: Piece;
  readonly same: readonly Piece[];
  readonly holders: readonly Holder[];
}

function typeOf({ piece, same, holders }: Alike): PieceType {
  const grams = Math.ceil(piece.mass * 1000 - DUST);
  const volume = Math.ceil(volumeOf(piece.size) * 1e9 - DUST);
  const goesInto = holders.map(
    (one) => grams <= one.grams && volume <= one.volume && goesThrough({ piece: piece.size, inside: one.kind.size }),
  );
  const byOne = holders.some(({ persons }, index) => persons === 1 && goesInto[index] === true);
  return { pieces: same, grams, volume, goesInto, needsTwo: !byOne && goesInto.some(Boolean) };
}

function byWeight(a: Piece, b: Piece): number {
  return (
    b.mass - a.mass ||
    volumeOf(b.size) - volumeOf(a.size) ||
    compareText(a.number, b.number) ||
    compareText(a.serial ?? '', b.serial ?? '')
  );
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** A box goes in when its edges, each from long to short, are no longer than those of the inside. */
function goesThrough({ piece, inside }: { readonly piece: CaseSize; readonly inside: CaseSize }): boolean {
  const room = edges(inside);
  return edges(piece).every((edge, index) => edge <= (room[index] ?? 0) + 1e-9);
}

function edges(size: CaseSize): readonly number[] {
  return [size.length, size.width, size.height].sort((a, b) => b - a);
}

export function volumeOf(size: CaseSize): number {
  return size.length * size.width * size.height;
}
