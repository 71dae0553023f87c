/*
 * What the site's supply leaves of a drive's rated torque and speed: air pressure after the hose, altitude and heat.
 * Invariant: what is left is never above one; what a drive may give at its highest pressure is never below one.
 * Not here: the drive's curve (engineering/torque-speed.ts).
 * Read next: ../cores/core-figures.ts.
 */

import type { Site } from '#lib/duty/site.ts';
import { airMotorFactors, highestAirFactors, runningAir } from '#lib/engineering/air-supply.ts';
import { altitudeShare, heatShare } from '#lib/engineering/petrol-derating.ts';
import type { AirSupply } from '#lib/equipment/drive.ts';
import type { DriveModel } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { type Pascals, pascals, type Ratio, ratio } from '#lib/units/quantity.ts';
import { share } from '../kit-constants.ts';

export interface SupplyShare {
  readonly torque: Ratio;
  readonly speed: Ratio;
  /** Pressure at the tool as a share of the rated one; 1 for other sources. */
  readonly pressure: number;
  /** What the drive may give beyond its plate: an air motor with its regulator up to the highest pressure. */
  readonly highest: { readonly torque: Ratio; readonly speed: Ratio };
}

const PLATE: SupplyShare['highest'] = { torque: ratio(1), speed: ratio(1) };
const FULL: SupplyShare = { torque: ratio(1), speed: ratio(1), pressure: 1, highest: PLATE };

export function supplyShare({ drive, site }: { readonly drive: DriveModel; readonly site: Site }): SupplyShare {
  const { power } = drive.facts;
  switch (power.kind) {
    case 'battery':
      return FULL;
    case 'petrol': {
      const high = site.altitude === undefined ? 1 : altitudeShare(site.altitude.high);
      const hot = site.temperature === undefined ? 1 : heatShare(site.temperature.high);
      return { ...FULL, torque: share(high * hot) };
    }
    case 'air':
      return airShare({ power, site });
  }
}

interface AirHere {
  readonly power: AirSupply;
  readonly site: Site;
}

/** Pressure and flow of free air at the running tool behind hose and couplings; the site's air is there. */
export function airAtTool({ power, site }: AirHere): ReturnType<typeof runningAir> {
  return runningAir({
    supplyPressure: site.airPressure?.low ?? power.ratedPressure,
    length: WORKING_CONSTANTS.hoseLength,
    bore: power.hoseBore,
    couplings: WORKING_CONSTANTS.hoseCouplings,
    consumption: power.consumption,
    ratedPressure: power.ratedPressure,
  });
}

/** As far as site and regulator let it rise; a regulator may stand at the drive's highest pressure. */
export function highestPressureAt({ power, site }: AirHere): Pascals {
  return pascals(Math.min(power.highestPressure, site.airPressure?.high ?? power.highestPressure));
}

function airShare({ power, site }: AirHere): SupplyShare {
  const { ratedPressure } = power;
  const highest = highestAirFactors({ ratedPressure, highestPressure: highestPressureAt({ power, site }) });
  if (site.airPressure === undefined) return { ...FULL, highest };
  const { pressure: atTool } = airAtTool({ power, site });
  const rated = airMotorFactors(ratedPressure);
  const real = airMotorFactors(atTool);
  const pressure = atTool / ratedPressure;
  if (rated === null || real === null) return { ...WORKING_CONSTANTS.starvedAir, pressure, highest };
  return { torque: share(real.torque / rated.torque), speed: share(real.speed / rated.speed), pressure, highest };
}
