/*
 * One thing that goes into a case or travels loose.
 * Invariant: its mass and size are those of the model; a drive's packs travel with it.
 * Not here: which pieces a plan needs (fleet) and which serial numbers (stock).
 * Read next: pack-cases.ts.
 */
import type { CaseSize, Model } from '#lib/equipment/model.ts';
import type { Kilograms, WattHours } from '#lib/units/quantity.ts';

export type PieceKind = 'battery drive' | 'air drive' | 'petrol drive' | 'pack' | 'air hose' | 'fuel can' | 'other';

export interface Piece {
  readonly number: string;
  readonly name: string;
  /** Null for counted items. */
  readonly serial: string | null;
  readonly kind: PieceKind;
  readonly mass: Kilograms;
  readonly size: CaseSize;
  /** Energy of one pack, and how many travel with the piece. */
  readonly lithium: { readonly energy: WattHours; readonly packs: number } | null;
}

export function pieceOf({ model, serial }: { readonly model: Model; readonly serial: string | null }): Piece {
  return {
    number: model.number,
    name: model.name,
    serial,
    kind: pieceKind(model),
    mass: model.mass,
    size: model.case,
    lithium: model.lithium ?? null,
  };
}

function pieceKind(model: Model): PieceKind {
  if (model.role === 'drive') return `${model.facts.power.kind} drive`;
  if (model.role !== 'accessory') return 'other';
  switch (model.facts.kind) {
    case 'spare pack':
      return 'pack';
    case 'air hose':
      return 'air hose';
    case 'fuel can':
      return 'fuel can';
    default:
      return 'other';
  }
}
