/*
 * Accessories that belong to one chain at the valve: pegs for the spokes, a guide for a long key, a sling where it hangs.
 * Invariant: an accessory is named only where the catalogue has one that fits.
 * Not here: what a crew carries besides (accessories.ts).
 * Read next: accessories.ts.
 */

import type { AccessoryModel } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { GUIDED_FROM_M, WORKING_HEIGHT_M } from '#lib/rules/buried.ts';
import type { Core, LineFacts } from '#lib/rules/facts.ts';
import { fitsPart } from '../chain/reactions.ts';
import type { Grip } from '../grips/grip-finder.ts';
import type { StockByRole } from '../stock-by-role.ts';

/** Pegs of one set; from the sets that hire houses pack, common practice, no source. */
const PEGS_IN_A_SET = 8;

export function coreAccessories(at: {
  readonly facts: LineFacts;
  readonly stock: StockByRole;
  readonly core: Core;
}): readonly string[] {
  const { drive, head } = at.core;
  if (at.facts.place.faces === 'up' || drive.mass + head.mass <= WORKING_CONSTANTS.hangingMass) return [];
  const sling = firstFitting(at.stock, 'sling support', drive.number);
  return sling === null ? [] : [sling.number];
}

export function gripAccessories(at: {
  readonly facts: LineFacts;
  readonly stock: StockByRole;
  readonly grip: Grip;
}): readonly { readonly number: string; readonly count: number }[] {
  const counts = new Map<string, number>();
  for (const { adapter } of at.grip.elements) {
    const { kind } = adapter.facts;
    const spokes = at.facts.duty.grip.wheelSpokes?.high ?? adapter.facts.wheel?.spokes.high ?? 0;
    const pegs = kind === 'peg plate' ? firstFitting(at.stock, 'pegs', adapter.number) : null;
    if (pegs !== null) raise(counts, { number: pegs.number, count: Math.max(1, Math.ceil(spokes / PEGS_IN_A_SET)) });
    const deep = (at.facts.duty.grip.depthToNut?.high ?? 0) + WORKING_HEIGHT_M.low > GUIDED_FROM_M;
    const guide = kind === 'valve key' && deep ? firstFitting(at.stock, 'key guide', adapter.number) : null;
    if (guide !== null) raise(counts, { number: guide.number, count: 1 });
  }
  return [...counts].map(([number, count]) => ({ number, count }));
}

export function firstFitting(
  stock: StockByRole,
  kind: AccessoryModel['facts']['kind'],
  number: string,
): AccessoryModel | null {
  return stock.accessories.find((accessory) => accessory.facts.kind === kind && fitsPart(accessory, number)) ?? null;
}

function raise(counts: Map<string, number>, need: { readonly number: string; readonly count: number }): void {
  counts.set(need.number, Math.max(counts.get(need.number) ?? 0, need.count));
}
