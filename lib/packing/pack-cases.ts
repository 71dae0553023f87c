/*
 * Packs a load into the fewest cases under lift limits and room, marks each case and says what transport law asks of it.
 * Invariant: every piece is in exactly one case or travels loose; no case is heavier than its limit or fuller than its room.
 * Not here: the search for the fewest (fewest-cases.ts).
 * Read next: fewest-cases.ts, centre-of-mass.ts, dangerous-goods.ts.
 */
import { type Kilograms, kilograms, type Metres, type WattHours, wattHours } from '#lib/units/quantity.ts';
import type { CaseKind } from './case-kinds.ts';
import { layIn } from './centre-of-mass.ts';
import { type DangerousGoods, dangerousGoods, type Transport } from './dangerous-goods.ts';
import { type FewestCases, fewestCases } from './fewest-cases.ts';
import type { Filling } from './filling.ts';
import { type Lift, liftMark, TWO_PERSONS } from './lift-mark.ts';
import { type Load, loadOf } from './load.ts';
import type { Piece } from './piece.ts';

export interface PackedCase {
  /** 1, 2, 3 … in the order of the packing list; loose pieces come last. */
  readonly label: number;
  /** Name of the case, or `loose`. */
  readonly name: string;
  /** In the order in which they go in: what is heavy for its size lies at the bottom. */
  readonly pieces: readonly Piece[];
  /** Gross. */
  readonly mass: Kilograms;
  /** Height of the centre of mass above the floor of the case, pieces laid in layers; null for a loose piece. */
  readonly centre: Metres | null;
  /** Who lifts it, and on whose authority. */
  readonly lift: Lift;
  readonly wattHours: WattHours;
  readonly dangerousGoods: readonly DangerousGoods[];
}

export interface PackedLoad {
  readonly cases: readonly PackedCase[];
  /** How far the number of cases is proven, without what travels loose. */
  readonly proof: PackingProof;
}

export interface PackingProof {
  readonly cases: number;
  /** So many are needed whichever way. */
  readonly bound: number;
  readonly sentence: string;
}

export interface PackingInput {
  readonly pieces: readonly Piece[];
  /** Gross mass of a case that one person lifts. */
  readonly liftLimit: Kilograms;
  readonly cases: readonly CaseKind[];
  readonly transport: Transport;
}

export function packCases({ pieces, liftLimit, cases, transport }: PackingInput): PackedLoad {
  const load = loadOf({ pieces, cases, onePerson: liftLimit, twoPersons: TWO_PERSONS });
  const fewest = fewestCases(load);
  const packed = deal(load, fewest.fillings);
  const alone = load.loose.map((piece) => ({ name: 'loose', pieces: [piece], mass: piece.mass, centre: null }));
  return {
    cases: [...packed, ...alone].map((each, index) => finish({ ...each, label: index + 1, transport })),
    proof: proofOf(fewest),
  };
}

export function proofOf({ fillings, bound }: FewestCases): PackingProof {
  const count = fillings.length;
  const cases = count === 1 ? '1 case' : `${count} cases`;
  return {
    cases: count,
    bound,
    sentence:
      bound >= count
        ? `${cases}: fewer would not hold these pieces under the lift limit (proven).`
        : `${cases}; at least ${bound} are needed. Whether fewer than ${count} would do was not settled within the effort allowed.`,
  };
}

interface Dealt {
  readonly name: string;
  readonly pieces: readonly Piece[];
  readonly mass: Kilograms;
  readonly centre: Metres | null;
}

/** Hands the pieces out to the fillings, in the order of the load. */
function deal(load: Load, fillings: readonly Filling[]): readonly Dealt[] {
  const left = load.types.map(({ pieces }) => [...pieces]);
  return fillings.flatMap(({ holder, counts }) => {
    const kind = load.holders[holder]?.kind;
    if (kind === undefined) return [];
    const chosen = counts.flatMap((count, type) => left[type]?.splice(0, count) ?? []);
    const { order, centre } = layIn({ pieces: chosen, inside: kind.size });
    const mass = kilograms(order.reduce((sum, piece) => sum + piece.mass, Number(kind.mass)));
    return [{ name: kind.name, pieces: order, mass, centre }];
  });
}

function finish({
  label,
  transport,
  ...dealt
}: Dealt & { readonly label: number; readonly transport: Transport }): PackedCase {
  const { pieces, mass } = dealt;
  const energy = pieces.reduce((sum, { lithium }) => sum + (lithium === null ? 0 : lithium.energy * lithium.packs), 0);
  return {
    ...dealt,
    label,
    lift: liftMark(mass),
    wattHours: wattHours(energy),
    dangerousGoods: dangerousGoods({ pieces, gross: mass, transport }),
  };
}
