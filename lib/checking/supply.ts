/*
 * What the site leaves of a drive's rated torque and speed, worked out a second time.
 * Invariant: a share is from 0 to 1; a site that says nothing takes nothing away.
 * Not here: whether the drive may run here at all (check-place.ts).
 * Read next: check-figures.ts.
 */
import { airMotorFactors, pressureAtTool } from '#lib/engineering/air-supply.ts';
import { altitudeShare, heatShare } from '#lib/engineering/petrol-derating.ts';
import type { AirSupply } from '#lib/equipment/drive.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { Subject } from './chain.ts';

export interface Supply {
  readonly torque: number;
  readonly speed: number;
  /** Pressure at the tool as a share of the rated one; 1 where no air is used. */
  readonly pressure: number;
}

export const FULL_SUPPLY: Supply = { torque: 1, speed: 1, pressure: 1 };

export function supplyOf({ chain, site }: Pick<Subject, 'chain' | 'site'>): Supply {
  const { power } = chain.drive.facts;
  if (power.kind === 'air') return airOf({ power, site });
  if (power.kind === 'battery') return FULL_SUPPLY;
  const thin = site.altitude ? altitudeShare(site.altitude.high) : 1;
  const hot = site.temperature ? heatShare(site.temperature.high) : 1;
  return { torque: within(thin * hot), speed: 1, pressure: 1 };
}

function airOf({ power, site }: { readonly power: AirSupply; readonly site: Subject['site'] }): Supply {
  if (site.airPressure === undefined) return FULL_SUPPLY;
  const left = pressureAtTool({
    supplyPressure: site.airPressure.low,
    freeAir: power.consumption,
    bore: power.hoseBore,
    length: WORKING_CONSTANTS.hoseLength,
    couplings: WORKING_CONSTANTS.hoseCouplings,
  });
  const here = airMotorFactors(left);
  const onPlate = airMotorFactors(power.ratedPressure);
  const pressure = left / power.ratedPressure;
  if (here === null || onPlate === null) return { ...WORKING_CONSTANTS.starvedAir, pressure };
  return { torque: within(here.torque / onPlate.torque), speed: within(here.speed / onPlate.speed), pressure };
}

const within = (share: number): number => Math.max(0, Math.min(1, share));
