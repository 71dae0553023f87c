/*
 * The pull in a restraint and the side load it leaves on the stem, worked out a second time.
 * Invariant: shortest arm, least angle and shock: nothing that can happen pulls harder.
 * Not here: whether the restraint stands it (check-chain.ts).
 * Read next: check-figures.ts.
 */
import { UNEQUAL_SHARE } from '#lib/engineering/reaction.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { Subject } from './chain.ts';
import { highestAtValve } from './highest-torque.ts';

/** Two anchors share the pull; one takes all of it, and all of it bends the stem. [N] */
export function pullOf(subject: Subject): { readonly force: number; readonly sideLoad: number } {
  const { arm, sideLoad } = subject.chain.restraint.facts;
  const anchors = sideLoad === 'single anchor' ? 1 : 2;
  const lever = anchors * arm.low * Math.sin((WORKING_CONSTANTS.pullAngle / 180) * Math.PI);
  const force = (WORKING_CONSTANTS.shock * highestAtValve(subject)) / lever;
  return { force, sideLoad: anchors === 1 ? force : UNEQUAL_SHARE * force };
}
