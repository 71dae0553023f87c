/*
 * What a chain multiplies torque by, and the most that its drive may give, on one line and site.
 * Invariant: a joint widens the factor both ways; the highest stall is that of the strongest gear at the highest pressure.
 * Not here: gears, limiters and times (../cores/core-figures.ts).
 * Read next: ../cores/core-figures.ts, torque-cap.ts.
 */
import { chainFactor } from '#lib/engineering/chain-torque.ts';
import { throughJoint } from '#lib/engineering/universal-joint.ts';
import type { DriveModel, HeadModel } from '#lib/equipment/model.ts';
import type { LineFacts } from '#lib/rules/facts.ts';
import { jointAngle } from '#lib/rules/ways-of-working.ts';
import type { Range } from '#lib/units/known-value.ts';
import { type NewtonMetres, newtonMetres, ratio } from '#lib/units/quantity.ts';
import type { SupplyShare } from './supply-share.ts';

/** From the drive to the valve. */
export function headFactor(head: HeadModel, facts: Pick<LineFacts, 'line'>): Range<'1'> {
  const factor = chainFactor([{ ratio: head.facts.ratio, efficiency: head.facts.efficiency }]);
  return throughJoint({ factor, angle: jointAngle(facts) });
}

/** From under the head to the valve: nothing but a joint changes the torque there. */
export function underHeadFactor(facts: Pick<LineFacts, 'line'>): Range<'1'> {
  return throughJoint({ factor: { low: ratio(1), high: ratio(1) }, angle: jointAngle(facts) });
}

export function highestStall(drive: DriveModel, supply: SupplyShare): NewtonMetres {
  return newtonMetres(Math.max(...drive.facts.gears.map((gear) => gear.stallTorque)) * supply.highest.torque);
}
