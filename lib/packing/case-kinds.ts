/*
 * The cases of a catalogue as packing sees them.
 * Invariant: the inside is smaller than the case by its walls.
 * Not here: putting pieces in (pack-cases.ts).
 * Read next: load.ts.
 */
import type { CaseSize, Model } from '#lib/equipment/model.ts';
import { type Kilograms, metres } from '#lib/units/quantity.ts';

export interface CaseKind {
  readonly name: string;
  /** Inside. */
  readonly size: CaseSize;
  readonly mass: Kilograms;
}

/** Wall and foam on each side, m. Common practice, no source. */
const WALL = 0.015;

export function caseKinds(models: readonly Model[]): readonly CaseKind[] {
  return models
    .filter((model) => model.role === 'accessory' && model.facts.kind === 'case')
    .map((model) => ({
      name: model.name,
      size: {
        length: metres(model.case.length - 2 * WALL),
        width: metres(model.case.width - 2 * WALL),
        height: metres(model.case.height - 2 * WALL),
      },
      mass: model.mass,
    }));
}
