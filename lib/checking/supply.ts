/*
 * What the site leaves of a drive's rated torque and speed, worked out a second time.
 * Invariant: a share is from 0 to 1; a site that says nothing takes nothing away.
 * Not here: whether the drive may run here at all (check-place.ts).
 * Read next: check-figures.ts.
 */
import { airMotorFactors, airTaken, pressureAtTool } from '#lib/engineering/air-supply.ts';
import { altitudeShare, heatShare } from '#lib/engineering/petrol-derating.ts';
import type { AirSupply } from '#lib/equipment/drive.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { pascals } from '#lib/units/quantity.ts';
import type { Subject } from './chain.ts';

export interface Supply {
  readonly torque: number;
  readonly speed: number;
  /** Pressure at the tool as a share of the rated one; 1 where no air is used. */
  readonly pressure: number;
  /** Beyond the plate: an air motor whose regulator lets its highest pressure through. */
  readonly highest: { readonly torque: number; readonly speed: number };
}

const PLATE: Supply = { torque: 1, speed: 1, pressure: 1, highest: { torque: 1, speed: 1 } };

export function supplyOf({ chain, site }: Pick<Subject, 'chain' | 'site'>): Supply {
  const { power } = chain.drive.facts;
  if (power.kind === 'air') return airOf({ power, site });
  if (power.kind === 'battery') return PLATE;
  const thin = site.altitude ? altitudeShare(site.altitude.high) : 1;
  const hot = site.temperature ? heatShare(site.temperature.high) : 1;
  return { ...PLATE, torque: within(thin * hot) };
}

interface Air {
  readonly power: AirSupply;
  readonly site: Subject['site'];
}

function airOf({ power, site }: Air): Supply {
  const highest = beyondPlate({ power, site });
  if (site.airPressure === undefined) return { ...PLATE, highest };
  const left = leftAtTool(power, site.airPressure.low);
  const here = airMotorFactors(left);
  const onPlate = airMotorFactors(power.ratedPressure);
  const pressure = left / power.ratedPressure;
  if (here === null || onPlate === null) return { ...WORKING_CONSTANTS.starvedAir, pressure, highest };
  return { torque: within(here.torque / onPlate.torque), speed: within(here.speed / onPlate.speed), pressure, highest };
}

/** The flow falls with the pressure that it leaves: tried until nothing changes. */
export function leftAtTool(power: AirSupply, supply: AirSupply['ratedPressure']): AirSupply['ratedPressure'] {
  const ends = { lowest: 0, highest: Number(supply) };
  while (ends.highest - ends.lowest > 1e-7) {
    const tried = pascals((ends.lowest + ends.highest) / 2);
    const left = pressureAtTool({
      supplyPressure: supply,
      freeAir: flowAt(power, tried),
      bore: power.hoseBore,
      length: WORKING_CONSTANTS.hoseLength,
      couplings: WORKING_CONSTANTS.hoseCouplings,
    });
    if (left < tried) ends.highest = tried;
    else ends.lowest = tried;
  }
  return pascals(ends.lowest);
}

/** Free air that the drive takes at a pressure. [m³/s] */
export function flowAt({ consumption, ratedPressure }: AirSupply, pressure: number): AirSupply['consumption'] {
  return airTaken({ freeAir: consumption, ratedPressure, pressure: pascals(pressure) });
}

/** As far as the site's air rises and the drive's regulator lets it. [Pa] */
export function highestPressure({ power, site }: Air): number {
  return Math.min(power.highestPressure, site.airPressure?.high ?? Number.POSITIVE_INFINITY);
}

function beyondPlate({ power, site }: Air): Supply['highest'] {
  const letThrough = highestPressure({ power, site });
  const most = airMotorFactors(pascals(letThrough));
  const plate = airMotorFactors(power.ratedPressure);
  if (most === null || plate === null) return { torque: Math.max(1, letThrough / power.ratedPressure), speed: 1 };
  const above = Math.max(1, letThrough / 7e5);
  return {
    torque: Math.max(1, (above * most.torque) / plate.torque),
    speed: Math.max(1, most.speed / plate.speed),
  };
}

const within = (share: number): number => Math.max(0, Math.min(1, share));
