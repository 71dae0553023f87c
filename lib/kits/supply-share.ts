/*
 * What the site's supply leaves of a drive's rated torque and speed: air pressure after the hose, altitude and heat.
 * Invariant: a share is never above one: the figures of a drive are its highest.
 * Not here: the drive's curve (engineering/torque-speed.ts).
 * Read next: core-figures.ts.
 */

import type { Site } from '#lib/duty/site.ts';
import { airMotorFactors, pressureAtTool } from '#lib/engineering/air-supply.ts';
import { altitudeShare, heatShare } from '#lib/engineering/petrol-derating.ts';
import type { AirSupply } from '#lib/equipment/drive.ts';
import type { DriveModel } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { type Ratio, ratio } from '#lib/units/quantity.ts';
import { share } from './kit-constants.ts';

export interface SupplyShare {
  readonly torque: Ratio;
  readonly speed: Ratio;
  /** Pressure at the tool as a share of the rated one; 1 for other sources. */
  readonly pressure: number;
}

const FULL: SupplyShare = { torque: ratio(1), speed: ratio(1), pressure: 1 };

export function supplyShare({ drive, site }: { readonly drive: DriveModel; readonly site: Site }): SupplyShare {
  const { power } = drive.facts;
  switch (power.kind) {
    case 'battery':
      return FULL;
    case 'petrol': {
      const high = site.altitude === undefined ? 1 : altitudeShare(site.altitude.high);
      const hot = site.temperature === undefined ? 1 : heatShare(site.temperature.high);
      return { torque: share(high * hot), speed: ratio(1), pressure: 1 };
    }
    case 'air':
      return airShare({ power, site });
  }
}

function airShare({ power, site }: { readonly power: AirSupply; readonly site: Site }): SupplyShare {
  if (site.airPressure === undefined) return FULL;
  const atTool = pressureAtTool({
    supplyPressure: site.airPressure.low,
    length: WORKING_CONSTANTS.hoseLength,
    bore: power.hoseBore,
    couplings: WORKING_CONSTANTS.hoseCouplings,
    freeAir: power.consumption,
  });
  const rated = airMotorFactors(power.ratedPressure);
  const real = airMotorFactors(atTool);
  const pressure = atTool / power.ratedPressure;
  if (rated === null || real === null) return { ...WORKING_CONSTANTS.starvedAir, pressure };
  return { torque: share(real.torque / rated.torque), speed: share(real.speed / rated.speed), pressure };
}
