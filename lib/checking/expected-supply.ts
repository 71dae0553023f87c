/*
 * The steps that the calculation sheet must show of what feeds the drive: air, thin and hot air, packs.
 * Invariant: every number comes from models, site and the house's figures through this checker's own arithmetic.
 * Not here: what a crew carries (power-needs.ts).
 * Read next: supply.ts.
 */
import { airMotorFactors } from '#lib/engineering/air-supply.ts';
import { coldShare } from '#lib/engineering/energy.ts';
import type { AirSupply } from '#lib/equipment/drive.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { celsius, pascals } from '#lib/units/quantity.ts';
import type { Subject } from './chain.ts';
import { computed, type ExpectedStep, just, outOf, plate, practice } from './figure.ts';
import { visitWorkOf } from './strokes.ts';
import { flowAt, highestPressure, leftAtTool, supplyOf } from './supply.ts';

/** What the speeds and the stall take from the steps of the supply; a battery drive always has its plate. */
export function supplyFigures(subject: Subject): ExpectedStep['inputs'] {
  if (subject.chain.drive.facts.power.kind === 'battery') return {};
  const { torque, speed, highest } = supplyOf(subject);
  return {
    s_T: computed(torque),
    s_n: computed(speed),
    h_T: computed(highest.torque),
    h_n: computed(highest.speed),
  };
}

export function supplySteps(subject: Subject): readonly ExpectedStep[] {
  const { power } = subject.chain.drive.facts;
  if (power.kind === 'petrol') return [thinAir(subject)];
  return power.kind === 'air' ? airSteps(subject, power) : [];
}

function airSteps(subject: Subject, power: AirSupply): readonly ExpectedStep[] {
  const { airPressure } = subject.site;
  if (airPressure === undefined) return [];
  const { torque, highest } = supplyOf(subject);
  const left = leftAtTool(power, airPressure.low);
  const flow = flowAt(power, left);
  const p_r = plate(power.ratedPressure, 'Pa');
  const p_t = computed(left, 'Pa');
  const basis = outOf([airPressure.basis]);
  const isStarved = airMotorFactors(pascals(left)) === null;
  return [
    {
      id: 'air-at-tool',
      inputs: {
        p: airPressure,
        L: practice(WORKING_CONSTANTS.hoseLength, 'm'),
        c: practice(WORKING_CONSTANTS.hoseCouplings),
        d: plate(power.hoseBore, 'm'),
        Q: computed(flow, 'm³/s'),
      },
      result: just(left, { unit: 'Pa', basis }),
    },
    {
      id: 'air-taken',
      inputs: { Q_r: plate(power.consumption, 'm³/s'), p_r, p_t },
      result: just(flow, { unit: 'm³/s', basis }),
    },
    {
      id: 'supply-share',
      inputs: { p_t, p_r },
      result: just(torque, { unit: '1', basis: isStarved ? 'rule of thumb' : basis }),
    },
    {
      id: 'highest-supply',
      inputs: { p_h: computed(highestPressure({ power, site: subject.site }), 'Pa'), p_r },
      result: just(highest.torque, { unit: '1', basis }),
    },
  ];
}

function thinAir(subject: Subject): ExpectedStep {
  const { altitude, temperature } = subject.site;
  const isSaid = altitude !== undefined || temperature !== undefined;
  return {
    id: 'supply-share',
    inputs: { ...(altitude ? { h: altitude } : {}), ...(temperature ? { t: temperature } : {}) },
    result: just(supplyOf(subject).torque, { unit: '1', basis: isSaid ? 'rule of thumb' : 'assumed' }),
  };
}

export function packSteps(subject: Subject): readonly ExpectedStep[] {
  const { drive, head } = subject.chain;
  const { power } = drive.facts;
  if (power.kind !== 'battery') return [];
  const work = visitWorkOf(subject);
  const drawn = work / (head.facts.efficiency.low * power.efficiency) / 3600;
  const { temperature } = subject.site;
  const coldest = temperature?.low ?? 20;
  const cold = coldShare(celsius(coldest));
  const pack = power.voltage * power.capacity_ah;
  const gives = pack * WORKING_CONSTANTS.packShare * cold;
  return [
    {
      id: 'drawn-from-packs',
      inputs: { W: computed(work, 'J'), η_h: plate(head.facts.efficiency.low), η_d: plate(power.efficiency) },
      result: computed(drawn, 'Wh'),
    },
    {
      id: 'packs-per-visit',
      inputs: {
        E: computed(drawn, 'Wh'),
        E_p: plate(pack, 'Wh'),
        u: practice(WORKING_CONSTANTS.packShare),
        t: temperature === undefined ? practice(coldest, '°C') : computed(coldest, '°C'),
        c: practice(cold),
      },
      result: practice(gives > 0 ? drawn / gives : 0),
    },
  ];
}
