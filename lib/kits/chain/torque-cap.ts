/*
 * The highest torque that the parts of a chain carry, so that the limiter of an assembly is never set past its weakest part.
 * Invariant: at the cap every rating along the chain, the force rating of the restraint and the grip of a plate still hold; what stands the stall sets no cap.
 * Not here: what the valve must never see (duty).
 * Read next: ../resolve-parts.ts.
 */

import type { AdapterModel, DriveModel, ExtensionModel, HeadModel, RestraintModel } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { LineFacts } from '#lib/rules/facts.ts';
import { heldByPlate } from '#lib/rules/restraint.ts';
import { type NewtonMetres, newtonMetres } from '#lib/units/quantity.ts';
import { headFactor, highestStall } from './chain-limits.ts';
import { supplyShare } from './supply-share.ts';

export function torqueCap(chain: {
  readonly drive: DriveModel;
  readonly head: HeadModel;
  readonly links: readonly { readonly adapter: AdapterModel; readonly extensions: readonly ExtensionModel[] }[];
  readonly restraint: RestraintModel;
  readonly facts: LineFacts;
}): NewtonMetres {
  const parts = [chain.head, ...chain.links.flatMap(({ adapter, extensions }) => [adapter, ...extensions])];
  const held = heldByPlate(chain.restraint) ?? Number.POSITIVE_INFINITY;
  const weakest = Math.min(...parts.map((part) => part.facts.torqueRating), restraintCap(chain.restraint), held);
  const supply = supplyShare({ drive: chain.drive, site: chain.facts.site });
  const stall = highestStall(chain.drive, supply) * headFactor(chain.head, chain.facts).high;
  return newtonMetres(weakest < stall ? weakest : Number.POSITIVE_INFINITY);
}

/** Torque at which the pull, shock included, reaches the force rating: reactions.ts turned round. */
export function restraintCap({ facts }: RestraintModel): number {
  const arms = facts.sideLoad === 'single anchor' ? 1 : 2;
  const square = Math.sin((WORKING_CONSTANTS.pullAngle * Math.PI) / 180);
  return (facts.forceRating * arms * facts.arm.low * square) / WORKING_CONSTANTS.shock;
}
