/*
 * Restraints with the second chain that reversing work asks for, and the pull that a core puts on them.
 * Invariant: the pull is worked out at the shortest arm the restraint may be set to, shock included.
 * Not here: whether the anchor is there (rules).
 * Read next: ../search-class.ts.
 */

import { forceWithShock, needsSecondChain, reactionForce, sideLoad } from '#lib/engineering/reaction.ts';
import type { AccessoryModel, RestraintModel } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { CoreView, LineFacts, ReactionFigures } from '#lib/rules/facts.ts';
import { goesBothWays } from '#lib/rules/ways-of-working.ts';
import { metres, type NewtonMetres, type Newtons, newtons } from '#lib/units/quantity.ts';
import type { StockByRole } from '../stock-by-role.ts';

export interface Reaction {
  readonly restraint: RestraintModel;
  readonly secondChain: AccessoryModel | null;
}

export function fitsPart(accessory: AccessoryModel, number: string): boolean {
  return accessory.facts.fits.length === 0 || accessory.facts.fits.includes(number);
}

export function reactionsOf({
  restraints,
  stock,
  facts,
}: {
  readonly restraints: readonly RestraintModel[];
  readonly stock: StockByRole;
  readonly facts: LineFacts;
}): readonly Reaction[] {
  const work = goesBothWays(facts) ? 'both ways' : 'one way';
  const chains = stock.accessories.filter((accessory) => accessory.facts.kind === 'second chain');
  return restraints.map((restraint) => {
    const wanted = needsSecondChain({ directions: restraint.facts.directions, work });
    const chain = wanted ? chains.find((accessory) => fitsPart(accessory, restraint.number)) : undefined;
    return { restraint, secondChain: chain ?? null };
  });
}

export function reactionFigures({
  core,
  restraint,
}: {
  readonly core: CoreView;
  readonly restraint: RestraintModel;
}): ReactionFigures {
  const force = reactionForceAt({ restraint, torque: core.figures.highestAtValve });
  return {
    arm_m: restraint.facts.arm.low,
    force,
    sideLoad: sideLoad({ force, anchoring: restraint.facts.sideLoad }),
  };
}

/** Pull at a torque at the valve, shock included. */
export function reactionForceAt({
  restraint,
  torque,
}: {
  readonly restraint: RestraintModel;
  readonly torque: NewtonMetres;
}): Newtons {
  const arm_m = restraint.facts.arm.low;
  const single = restraint.facts.sideLoad === 'single anchor';
  const pull = reactionForce({
    torque,
    arm: metres(single ? arm_m : 2 * arm_m),
    pullAngle: WORKING_CONSTANTS.pullAngle,
  });
  return newtons(forceWithShock({ force: pull, shock: WORKING_CONSTANTS.shock }));
}
