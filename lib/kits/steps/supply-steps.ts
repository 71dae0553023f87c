/*
 * The steps of an assembly that follow from what feeds its drive: air at the tool, thin and hot air, packs of a visit.
 * Invariant: each step names its formula, its inputs with units, and its authority, and can be redone by hand.
 * Not here: how many packs a crew carries (../carried/pack-needs.ts).
 * Read next: assembly-steps.ts.
 */
import { airMotorFactors } from '#lib/engineering/air-supply.ts';
import { coldShare, drawnFromStore, packEnergy } from '#lib/engineering/energy.ts';
import type { AirSupply, BatteryStore } from '#lib/equipment/drive.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { Step, StepInput } from '#lib/units/calculation-step.ts';
import { celsius } from '#lib/units/quantity.ts';
import { airAtTool, highestPressureAt, supplyShare } from '../chain/supply-share.ts';
import { asInput, fixed, just, PRACTICE, result, type StepsInput } from './step-values.ts';

const HOSE_SOURCE = 'J. Sullivan, Fluid Power, 4th ed., Examples 16.1 and 16.2; couplings are common practice.';
const AIR_TABLE = 'Correction table of a public technical guide to industrial air motors.';
const FARM_RULE = 'Field & Solie, Introduction to Agricultural Engineering Technology.';

/** Before the torques: what the supply leaves of the plate's figures, and what it may give beyond them. */
export function supplySteps(input: StepsInput): readonly Step[] {
  const { core, site } = input.whole;
  const { power } = core.drive.facts;
  if (power.kind === 'air' && site.airPressure !== undefined) return airSteps(input, power);
  return power.kind === 'petrol' ? petrolSteps(input) : [];
}

/** How much of the plate's torque and speed is there, and how much more may come; nothing of a drive that always has its plate. */
export function supplyInputs({ whole }: StepsInput): readonly StepInput[] {
  const { drive } = whole.core;
  if (drive.facts.power.kind === 'battery') return [];
  const { torque, speed, highest } = supplyShare({ drive, site: whole.site });
  return [
    fixed('s_T', 'Share of the torque that the supply leaves', torque, '1', 'The steps of the supply'),
    fixed('s_n', 'Share of the speed that the supply leaves', speed, '1', 'The steps of the supply'),
    fixed('h_T', 'Torque at the highest supply over the plate’s', highest.torque, '1', 'The steps of the supply'),
    fixed('h_n', 'Speed at the highest supply over the plate’s', highest.speed, '1', 'The steps of the supply'),
  ];
}

function airSteps({ whole }: StepsInput, power: AirSupply): readonly Step[] {
  const { core, site } = whole;
  const { pressure, freeAir } = airAtTool({ power, site });
  const most = highestPressureAt({ power, site });
  const share = supplyShare({ drive: core.drive, site });
  const real = airMotorFactors(pressure);
  const basis = site.airPressure?.basis ?? 'assumed';
  const rated = fixed('p_r', 'Rated pressure of the drive', power.ratedPressure, 'Pa');
  const shown = fixed('p_t', 'Pressure at the tool', pressure, 'Pa', 'The step of the pressure');
  return [
    {
      id: 'air-at-tool',
      name: `Pressure at ${core.drive.number} while it runs`,
      formula: 'p_t = p − Δp(L + c·100·d, Q), Δp[psi] = 0.1025·L[ft]·(Q[cfm]/60)²/(CR·d[in]^5.31)',
      inputs: [
        ...(site.airPressure === undefined ? [] : [asInput('p', 'Pressure of the site', site.airPressure)]),
        fixed('L', 'Hose', WORKING_CONSTANTS.hoseLength, 'm', PRACTICE),
        fixed('c', 'Couplings and filter', WORKING_CONSTANTS.hoseCouplings, '1', PRACTICE),
        fixed('d', 'Bore of the hose', power.hoseBore, 'm'),
        fixed('Q', 'Free air taken at that pressure', freeAir, 'm³/s', 'The next step'),
      ],
      result: result('Pa', just(pressure), basis),
      source: HOSE_SOURCE,
    },
    {
      id: 'air-taken',
      name: 'Free air that the drive takes at that pressure',
      formula: 'Q = Q_r·(p_t + p_atm)/(p_r + p_atm)',
      inputs: [fixed('Q_r', 'Free air at rated pressure', power.consumption, 'm³/s'), rated, shown],
      result: result('m³/s', just(freeAir), basis),
      source: 'Choked flow goes with absolute pressure: ideal-gas scaling.',
    },
    {
      id: 'supply-share',
      name: 'Share of the torque that this pressure leaves',
      formula:
        real === null
          ? 'below the table, which begins at 3 bar: the house’s own share'
          : 's = k(p_t)/k(p_r), at most 1, k from the table',
      inputs: [shown, rated],
      result: result('1', just(share.torque), real === null ? 'rule of thumb' : basis),
      source: AIR_TABLE,
    },
    {
      id: 'highest-supply',
      name: 'Torque at the highest pressure over that of the plate',
      formula: 'h = k(p_h)/k(p_r), at least 1',
      inputs: [fixed('p_h', 'Highest pressure that it may get', most, 'Pa', 'Site and plate of the drive'), rated],
      result: result('1', just(share.highest.torque), basis),
      source: `${AIR_TABLE} At stall nothing flows and the hose takes nothing.`,
    },
  ];
}

function petrolSteps({ whole }: StepsInput): readonly Step[] {
  const { core, site } = whole;
  const inputs = [
    ...(site.altitude === undefined ? [] : [asInput('h', 'Altitude', site.altitude)]),
    ...(site.temperature === undefined ? [] : [asInput('t', 'Temperature of the air', site.temperature)]),
  ];
  const nothing = inputs.length === 0;
  return [
    {
      id: 'supply-share',
      name: 'Share of its torque that the engine keeps',
      formula: nothing
        ? 's = 1: neither altitude nor temperature of the site is given'
        : 's = (1 − 0.03·(h[ft] − 500)/1000)·(1 − 0.01·(t[°F] − 85)/10), each at most 1, at the high ends',
      inputs,
      result: result('1', just(supplyShare({ drive: core.drive, site }).torque), nothing ? 'assumed' : 'rule of thumb'),
      source: FARM_RULE,
    },
  ];
}

/** After the work at the valve: what it draws from the packs of a battery drive. */
export function packSteps({ whole, figures }: StepsInput): readonly Step[] {
  const { drive, head } = whole.core;
  const { power } = drive.facts;
  if (power.kind !== 'battery') return [];
  const efficiencies = [head.facts.efficiency.low, power.efficiency];
  const drawn = drawnFromStore({ work: figures.energyPerVisit, efficiencies });
  return [
    {
      id: 'drawn-from-packs',
      name: 'Energy drawn from the packs for a visit, at most',
      formula: 'E = W/(η_h·η_d)',
      inputs: [
        fixed('W', 'Work at the valve', figures.energyPerVisit, 'J', 'The step of the work'),
        fixed('η_h', `Lowest efficiency of head ${head.number}`, head.facts.efficiency.low, '1'),
        fixed('η_d', `Efficiency of ${drive.number}, pack to output`, power.efficiency, '1'),
      ],
      result: result('Wh', just(drawn), 'computed'),
      source: 'Definition of efficiency; stages in a row multiply.',
    },
    packsStep({ power, drawn, whole }),
  ];
}

function packsStep(at: {
  readonly power: BatteryStore;
  readonly drawn: number;
  readonly whole: StepsInput['whole'];
}): Step {
  const { power, drawn } = at;
  const { temperature } = at.whole.site;
  const nominal = packEnergy({ voltage: power.voltage, capacity_ah: power.capacity_ah });
  const coldest = celsius(temperature?.low ?? 20);
  const cold = coldShare(coldest);
  return {
    id: 'packs-per-visit',
    name: 'Packs emptied by a visit',
    formula: 'n = E/(E_p·u·c)',
    inputs: [
      fixed('E', 'Drawn from the packs', drawn, 'Wh', 'The step before'),
      fixed('E_p', 'Energy of a pack by its plate', nominal, 'Wh'),
      fixed('u', 'Part that is used before a change', WORKING_CONSTANTS.packShare, '1', PRACTICE),
      fixed('t', 'Temperature of the pack', coldest, '°C', temperature === undefined ? PRACTICE : 'The site'),
      fixed('c', 'Share that a pack gives at that temperature', cold, '1', PRACTICE),
    ],
    result: result('1', just(cold > 0 ? drawn / (nominal * WORKING_CONSTANTS.packShare * cold) : 0), 'rule of thumb'),
    source: 'Common practice, no source; the pack’s own data decide.',
  };
}
