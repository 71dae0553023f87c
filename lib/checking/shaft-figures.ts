/*
 * Stress, wind-up and highest speed of the shafts and key of a link, worked out a second time from their sections.
 * Invariant: drawn out to the longest, by the thinnest piece; a link without a stated section gives nothing.
 * Not here: comparing them (expected-shafts.ts, check-chain.ts).
 * Read next: expected-shafts.ts.
 */
import type { Chain } from './chain.ts';

/** Steel: shear modulus and modulus of elasticity in Pa, density in kg/m³; handbook values, from memory. */
const STEEL = { shear: 79e9, elastic: 210e9, density: 7850 } as const;
/** Share of the whirling speed that is used; common practice, no source. */
export const WHIRL_PART = 0.5;

export interface Piece {
  readonly outer: number;
  readonly inner: number;
  readonly length: number;
}

export function piecesOf({ extensions, adapter }: Chain['links'][number]): readonly Piece[] {
  return [...extensions, adapter].flatMap(({ facts }) => {
    const { section, length } = facts;
    return section && length ? [{ outer: section.outer, inner: section.inner, length: length.high }] : [];
  });
}

/** Polar second moment of area. [m⁴] */
const polar = ({ outer, inner }: Piece): number => (Math.PI / 32) * (outer ** 4 - inner ** 4);

/** In degrees. */
export function twistOf(pieces: readonly Piece[], torque: number): number {
  const radians = pieces.reduce((sum, piece) => sum + (torque * piece.length) / (STEEL.shear * polar(piece)), 0);
  return (radians / Math.PI) * 180;
}

export function stressOf(pieces: readonly Piece[], torque: number): number {
  return Math.max(...pieces.map((piece) => (torque * piece.outer) / 2 / polar(piece)));
}

/** In turns a minute; without end where nothing is stated. */
export function speedByLength(pieces: readonly Piece[]): number {
  const length = pieces.reduce((sum, piece) => sum + piece.length, 0);
  const waves = Math.sqrt(STEEL.elastic / STEEL.density) * (Math.PI / length) ** 2;
  const slowest = pieces.map(({ outer, inner }) => (waves * Math.hypot(outer, inner)) / 4);
  return (WHIRL_PART * 30 * Math.min(...slowest)) / Math.PI;
}
