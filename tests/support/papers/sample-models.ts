/** A small invented catalogue for pictures and papers: one model of every kind, with facts that look like the house's own. */
import type {
  AccessoryModel,
  AdapterModel,
  DriveModel,
  ExtensionModel,
  HeadModel,
  Model,
  OptionModel,
  RestraintModel,
} from '#lib/equipment/model.ts';
import { RESTRAINT_KINDS } from '#lib/equipment/parts.ts';
import { toMinor } from '#lib/money/money.ts';
import {
  bar,
  celsius,
  cubicMetresPerSecond,
  decibels,
  degrees,
  kilograms,
  metres,
  metresPerSecondSquared,
  minutes,
  newtonMetres,
  newtons,
  perMinute,
  ratio,
  seconds,
  volts,
  wattHours,
  watts,
} from '#lib/units/quantity.ts';

const base = (number: string, name: string, mass: number) => ({
  number,
  name,
  mass: kilograms(mass),
  case: { length: metres(0.6), width: metres(0.4), height: metres(0.25) },
  rates: { day_minor: toMinor(4200), week_minor: toMinor(16800), four_weeks_minor: toMinor(46200), minimum_days: 1 },
  replacement_minor: toMinor(410_000),
  counted: false,
  madeToOrder: false,
  marking: null,
});
const square = (size: string, gender: 'male' | 'female') => ({ form: 'square' as const, size, gender });

function drive(number: string, name: string, power: DriveModel['facts']['power']): DriveModel {
  return {
    ...base(number, name, 7.4),
    role: 'drive',
    ...(power.kind === 'battery' ? { lithium: { energy: wattHours(216), packs: 2 } } : {}),
    facts: {
      dutyClass: 'medium',
      gears: [
        { name: 'low', stallTorque: newtonMetres(210), ratedTorque: newtonMetres(130), freeSpeed: perMinute(28) },
        { name: 'high', stallTorque: newtonMetres(80), ratedTorque: newtonMetres(50), freeSpeed: perMinute(74) },
      ],
      output: square('20', 'male'),
      reversible: true,
      holdToRun: true,
      continuousRun: minutes(8),
      restAfterRun: minutes(6),
      soundPressure: decibels(82),
      vibration: metresPerSecondSquared(2.9),
      power,
      lowestTemperature: celsius(-15),
      highestTemperature: celsius(45),
      highestAltitude: metres(2000),
      limiter: null,
    },
  };
}

function head(number: string, name: string, kind: HeadModel['facts']['kind']): HeadModel {
  return {
    ...base(number, name, 5.2),
    role: 'head',
    facts: {
      kind,
      ratio: ratio(kind === 'inline' ? 1 : 2.5),
      efficiency: { low: ratio(0.86), high: ratio(0.94) },
      reverses: kind === 'right-angle',
      torqueRating: newtonMetres(520),
      maxInputSpeed: perMinute(200),
      input: square('20', 'female'),
      output: square('25', 'male'),
      ...(kind === 'open-centre' ? { bore: metres(0.064) } : {}),
      swingRadius: metres(0.24),
      height: metres(0.19),
    },
  };
}

function adapter(number: string, name: string, kind: AdapterModel['facts']['kind']): AdapterModel {
  const onNut = kind === 'drive socket' || kind === 'valve key';
  return {
    ...base(number, name, 6.1),
    role: 'adapter',
    facts: {
      kind,
      input: square('25', 'female'),
      ...(onNut
        ? { sockets: [{ shape: 'tapered square', acrossFlats: metres(0.032), slack: metres(0.002) }] }
        : {
            wheel: {
              diameter: { low: metres(0.3), high: metres(0.62) },
              spokes: { low: 3, high: 6 },
              dishUpTo: degrees(20),
              rimUpTo: metres(0.05),
            },
          }),
      takesExtension: true,
      retention: kind === 'bolt-on plate' ? 'bolted' : 'clamped',
      torqueRating: newtonMetres(430),
      fittingTime: seconds(90),
      staysOnWheel: kind === 'bolt-on plate',
      holdsSideways: kind === 'bolt-on plate',
      height: metres(0.12),
    },
  };
}

function extension(number: string, name: string, kind: ExtensionModel['facts']['kind']): ExtensionModel {
  return {
    ...base(number, name, 2.6),
    role: 'extension',
    facts: {
      kind,
      input: square('25', 'female'),
      output: square('25', 'male'),
      length: { low: metres(0.6), high: metres(0.6) },
      torqueRating: newtonMetres(380),
      highestAngle: degrees(25),
      maxSpeed: perMinute(120),
    },
  };
}

function restraint(kind: RestraintModel['facts']['kind'], index: number): RestraintModel {
  return {
    ...base(`R-${210 + index * 7}`, kind.charAt(0).toUpperCase() + kind.slice(1), 8.8),
    role: 'restraint',
    madeToOrder: kind === 'purpose-made restraint',
    facts: {
      kind,
      torqueRating: newtonMetres(600),
      forceRating: newtons(1500),
      arm: { low: metres(0.4), high: metres(0.9) },
      directions: 'both ways',
      followsTravel: kind === 'yoke clamp',
      sideLoad: kind === 'twin-point arm' || kind === 'yoke clamp' ? 'balanced' : 'single anchor',
      facings: ['up'],
      reach: metres(2.5),
      needs: ['structure'],
      setUpTime: minutes(4),
      headKinds: ['inline', 'right-angle', 'open-centre'],
    },
  };
}

function option(number: string, name: string, facts: Pick<OptionModel['facts'], 'kind' | 'sits'>): OptionModel {
  return {
    ...base(number, name, 1.9),
    role: 'option',
    facts: {
      ...facts,
      lowest: newtonMetres(20),
      highest: newtonMetres(420),
      error: ratio(0.08),
      step: newtonMetres(10),
      bothDirections: true,
      setUpTime: minutes(2),
      electronic: false,
    },
  };
}

function accessory(number: string, name: string, kind: AccessoryModel['facts']['kind']): AccessoryModel {
  return { ...base(number, name, 1.1), role: 'accessory', facts: { kind, fits: [], saleItem: false } };
}

export const SAMPLE_MODELS: readonly Model[] = [
  drive('D-214', 'Battery drive, medium, two gears', {
    kind: 'battery',
    voltage: volts(36),
    capacity_ah: 6,
    packsIncluded: 2,
    packNumber: 'S-156',
    efficiency: ratio(0.62),
    rechargeTime: minutes(75),
  }),
  drive('D-231', 'Air drive, medium, two gears', {
    kind: 'air',
    ratedPressure: bar(6.3),
    lowestPressure: bar(4),
    highestPressure: bar(7),
    consumption: cubicMetresPerSecond(0.021),
    hoseBore: metres(0.019),
  }),
  drive('D-247', 'Petrol drive, heavy, two gears', {
    kind: 'petrol',
    tank_l: 0.9,
    litresPerHour: 0.8,
    ratedPower: watts(1400),
  }),
  head('H-118', 'Inline head, medium', 'inline'),
  head('H-126', 'Right-angle head 2.5 : 1', 'right-angle'),
  head('H-134', 'Open-centre head, bore 64 mm', 'open-centre'),
  adapter('W-105', 'Peg plate for 3 to 6 spokes', 'peg plate'),
  adapter('W-117', 'Self-centring driver 300 to 620 mm', 'self-centring driver'),
  adapter('W-123', 'Spoke driver, long prongs, dish up to 20°', 'spoke driver'),
  adapter('W-141', 'Bolt-on plate with pins', 'bolt-on plate'),
  adapter('N-108', 'Drive socket, square 32 mm', 'drive socket'),
  adapter('N-122', 'Telescopic valve key 1.0 to 1.8 m', 'valve key'),
  extension('E-112', 'Extension shaft, square 25, 0.6 m', 'extension shaft'),
  extension('E-140', 'Universal joint, square 25, up to 25°', 'universal joint'),
  ...RESTRAINT_KINDS.map(restraint),
  option('L-104', 'Torque limiter, mechanical, 20 to 420 N·m', { kind: 'torque limiter', sits: 'after head' }),
  option('L-109', 'Torque limiter at the drive', { kind: 'torque limiter', sits: 'after drive' }),
  option('C-102', 'Turns counter, mechanical, clip-on', { kind: 'turns counter', sits: 'clip-on' }),
  accessory('S-156', 'Spare pack 36 V, 6 Ah', 'spare pack'),
  accessory('S-171', 'Second chain with hook', 'second chain'),
  accessory('S-183', 'Key guide for 150 mm tube', 'key guide'),
];
