/*
 * Puts pieces into cases under a lift limit and marks each case.
 * Invariant: every piece is in exactly one case or travels loose; no case is heavier than the limit.
 * Not here: proving that fewer cases would not do.
 * Read next: lift-mark.ts, dangerous-goods.ts.
 */
import type { CaseSize } from '#lib/equipment/model.ts';
import { type Kilograms, kilograms, type WattHours, wattHours } from '#lib/units/quantity.ts';
import { type DangerousGoods, dangerousGoods, type Transport } from './dangerous-goods.ts';
import { type Lift, liftMark } from './lift-mark.ts';
import type { Piece } from './piece.ts';

export interface CaseKind {
  readonly name: string;
  /** Inside. */
  readonly size: CaseSize;
  readonly mass: Kilograms;
}

export interface PackedCase {
  /** 1, 2, 3 … in the order of the packing list; loose pieces come last. */
  readonly label: number;
  /** Name of the case, or `loose`. */
  readonly name: string;
  readonly pieces: readonly Piece[];
  /** Gross. */
  readonly mass: Kilograms;
  /** Who lifts it, and on whose authority. */
  readonly lift: Lift;
  readonly wattHours: WattHours;
  readonly dangerousGoods: readonly DangerousGoods[];
}

export interface PackingInput {
  readonly pieces: readonly Piece[];
  readonly liftLimit: Kilograms;
  readonly cases: readonly CaseKind[];
  readonly transport: Transport;
}

/** Share of a case's inside that odd shapes and foam leave for equipment. Common practice, no source. */
const FILL = 0.7;

interface OpenCase {
  readonly kind: CaseKind;
  readonly pieces: Piece[];
  mass: number;
  room: number;
}

/** First fit, heaviest piece first; each new case is the smallest that takes the piece. */
export function packCases({ pieces, liftLimit, cases, transport }: PackingInput): readonly PackedCase[] {
  const kinds = [...cases].sort((a, b) => volume(a.size) - volume(b.size));
  const order = [...pieces].sort(
    (a, b) => b.mass - a.mass || volume(b.size) - volume(a.size) || compareText(a.number, b.number),
  );
  const open: OpenCase[] = [];
  const loose: Piece[] = [];
  for (const piece of order) {
    const into =
      open.find((packed) => takes({ packed, piece, liftLimit })) ?? openCase({ kinds, piece, liftLimit, open });
    if (into === undefined) loose.push(piece);
    else put({ into, piece });
  }
  const packed = open.map((each) => ({ name: each.kind.name, pieces: each.pieces, mass: kilograms(each.mass) }));
  const alone = loose.map((piece) => ({ name: 'loose', pieces: [piece], mass: piece.mass }));
  return [...packed, ...alone].map((each, index) => finish({ ...each, label: index + 1, transport }));
}

function openCase({
  kinds,
  piece,
  liftLimit,
  open,
}: {
  readonly kinds: readonly CaseKind[];
  readonly piece: Piece;
  readonly liftLimit: Kilograms;
  readonly open: OpenCase[];
}): OpenCase | undefined {
  const empty = kinds.map((kind): OpenCase => ({ kind, pieces: [], mass: kind.mass, room: volume(kind.size) * FILL }));
  const chosen = empty.find((packed) => takes({ packed, piece, liftLimit }));
  if (chosen !== undefined) open.push(chosen);
  return chosen;
}

function takes({
  packed,
  piece,
  liftLimit,
}: {
  readonly packed: OpenCase;
  readonly piece: Piece;
  readonly liftLimit: Kilograms;
}): boolean {
  return (
    packed.mass + piece.mass <= liftLimit &&
    volume(piece.size) <= packed.room &&
    goesThrough({ piece: piece.size, inside: packed.kind.size })
  );
}

function put({ into, piece }: { readonly into: OpenCase; readonly piece: Piece }): void {
  into.pieces.push(piece);
  into.mass += piece.mass;
  into.room -= volume(piece.size);
}

/** A box goes in when its edges, each from long to short, are no longer than those of the inside. */
function goesThrough({ piece, inside }: { readonly piece: CaseSize; readonly inside: CaseSize }): boolean {
  const room = edges(inside);
  return edges(piece).every((edge, index) => edge <= (room[index] ?? 0));
}

function edges(size: CaseSize): readonly number[] {
  return [size.length, size.width, size.height].sort((a, b) => b - a);
}

function volume(size: CaseSize): number {
  return size.length * size.width * size.height;
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

interface Filled {
  readonly label: number;
  readonly name: string;
  readonly pieces: readonly Piece[];
  readonly mass: Kilograms;
  readonly transport: Transport;
}

function finish({ label, name, pieces, mass, transport }: Filled): PackedCase {
  const energy = pieces.reduce((sum, { lithium }) => sum + (lithium === null ? 0 : lithium.energy * lithium.packs), 0);
  return {
    label,
    name,
    pieces,
    mass,
    lift: liftMark(mass),
    wattHours: wattHours(energy),
    dangerousGoods: dangerousGoods({ pieces, gross: mass, transport }),
  };
}
