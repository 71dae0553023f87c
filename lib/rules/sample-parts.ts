/*
 * Small invented parts from which the rules' examples are made.
 * Invariant: each sample fits the sample line of sample-facts.ts, so that an example changes only what it speaks of.
 * Not here: the house's catalogue (seeds).
 * Read next: sample-facts.ts.
 */
import type { Coupling } from '#lib/equipment/coupling.ts';
import type { DriveFacts, Gear } from '#lib/equipment/drive.ts';
import type {
  AdapterModel,
  DriveModel,
  ExtensionModel,
  HeadModel,
  OptionModel,
  RestraintModel,
} from '#lib/equipment/model.ts';
import type { AdapterFacts, ExtensionFacts, HeadFacts, OptionFacts, RestraintFacts } from '#lib/equipment/parts.ts';
import { type SampleBase, sampleBase } from '#lib/equipment/sample-model.ts';
import {
  celsius,
  cubicMetresPerSecond,
  decibels,
  degrees,
  kilograms,
  metres,
  metresPerSecondSquared,
  newtonMetres,
  newtons,
  pascals,
  perMinute,
  ratio,
  seconds,
  volts,
  watts,
} from '#lib/units/quantity.ts';

const square = (size: string, gender: 'male' | 'female'): Coupling => ({ form: 'square', size, gender });

/** What a sample may change of a model besides its facts. */
export interface SampleChange<Facts> {
  readonly facts?: Partial<Facts>;
  readonly number?: string;
  readonly mass_kg?: number;
  readonly marking?: string;
  readonly madeToOrder?: true;
}

function changed(start: SampleBase, change: SampleChange<unknown>): SampleBase {
  return {
    ...start,
    number: change.number ?? start.number,
    mass: change.mass_kg === undefined ? start.mass : kilograms(change.mass_kg),
    marking: change.marking ?? start.marking,
    madeToOrder: change.madeToOrder ?? start.madeToOrder,
  };
}

export const SAMPLE_GEAR: Gear = {
  name: 'low',
  stallTorque: newtonMetres(100),
  ratedTorque: newtonMetres(80),
  freeSpeed: perMinute(120),
};

const BATTERY: DriveFacts['power'] = {
  kind: 'battery',
  voltage: volts(36),
  capacity_ah: 5,
  packsIncluded: 2,
  packNumber: 'SP-1',
  efficiency: ratio(0.6),
  rechargeTime: seconds(3600),
};

export function sampleDrive(change: SampleChange<DriveFacts> = {}): DriveModel {
  const facts: DriveFacts = {
    dutyClass: 'light',
    gears: [SAMPLE_GEAR],
    output: square('20', 'male'),
    reversible: true,
    holdToRun: true,
    continuousRun: seconds(1800),
    restAfterRun: seconds(600),
    soundPressure: decibels(78),
    vibration: metresPerSecondSquared(2),
    power: BATTERY,
    lowestTemperature: celsius(-15),
    highestTemperature: celsius(45),
    highestAltitude: metres(3000),
    limiter: null,
    ...change.facts,
  };
  return { ...changed(sampleBase('SD-1', 'sample drive'), change), role: 'drive', facts };
}

export const SAMPLE_AIR: DriveFacts['power'] = {
  kind: 'air',
  ratedPressure: pascals(6e5),
  lowestPressure: pascals(4e5),
  highestPressure: pascals(7e5),
  consumption: cubicMetresPerSecond(0.02),
  hoseBore: metres(0.013),
};

export const SAMPLE_PETROL: DriveFacts['power'] = {
  kind: 'petrol',
  tank_l: 1,
  litresPerHour: 0.8,
  ratedPower: watts(1200),
};

export function sampleHead(change: SampleChange<HeadFacts> = {}): HeadModel {
  const facts: HeadFacts = {
    kind: 'open-centre',
    ratio: ratio(4),
    efficiency: { low: ratio(0.8), high: ratio(0.9) },
    reverses: false,
    torqueRating: newtonMetres(500),
    maxInputSpeed: perMinute(300),
    input: square('20', 'female'),
    output: square('25', 'male'),
    bore: metres(0.06),
    swingRadius: metres(0.25),
    height: metres(0.2),
    ...change.facts,
  };
  return { ...changed(sampleBase('SH-1', 'sample head'), change), role: 'head', facts };
}

export function sampleWheelAdapter(change: SampleChange<AdapterFacts> = {}): AdapterModel {
  const facts: AdapterFacts = {
    kind: 'peg plate',
    input: square('25', 'female'),
    wheel: {
      diameter: { low: metres(0.25), high: metres(0.5) },
      spokes: { low: 3, high: 6 },
      dishUpTo: degrees(10),
      rimUpTo: metres(0.04),
    },
    takesExtension: true,
    bore: metres(0.06),
    retention: 'clamped',
    torqueRating: newtonMetres(450),
    fittingTime: seconds(120),
    staysOnWheel: false,
    holdsSideways: true,
    height: metres(0.1),
    ...change.facts,
  };
  return { ...changed(sampleBase('SA-1', 'sample peg plate'), change), role: 'adapter', facts };
}

/** A telescopic key; `drive socket` when told so by its facts. */
export function sampleKey(change: SampleChange<AdapterFacts> = {}): AdapterModel {
  const facts: AdapterFacts = {
    kind: 'valve key',
    input: square('25', 'female'),
    sockets: [{ shape: 'square', acrossFlats: metres(0.03), slack: metres(0.003) }],
    length: { low: metres(1), high: metres(2.2) },
    takesExtension: true,
    retention: 'none',
    torqueRating: newtonMetres(450),
    fittingTime: seconds(60),
    staysOnWheel: false,
    holdsSideways: false,
    height: metres(0.1),
    ...change.facts,
  };
  return { ...changed(sampleBase('SK-1', 'sample key'), change), role: 'adapter', facts };
}

export function sampleShaft(change: SampleChange<ExtensionFacts> = {}): ExtensionModel {
  const facts: ExtensionFacts = {
    kind: 'extension shaft',
    input: square('25', 'female'),
    output: square('25', 'male'),
    length: { low: metres(0.5), high: metres(0.5) },
    torqueRating: newtonMetres(450),
    maxSpeed: perMinute(100),
    ...change.facts,
  };
  return { ...changed(sampleBase('SX-1', 'sample shaft'), change), role: 'extension', facts };
}

export function sampleJoint(change: SampleChange<ExtensionFacts> = {}): ExtensionModel {
  return sampleShaft({
    number: 'SJ-1',
    ...change,
    facts: {
      kind: 'universal joint',
      highestAngle: degrees(25),
      length: { low: metres(0.1), high: metres(0.1) },
      ...change.facts,
    },
  });
}

export function sampleRestraint(change: SampleChange<RestraintFacts> = {}): RestraintModel {
  const facts: RestraintFacts = {
    kind: 'twin-point arm',
    torqueRating: newtonMetres(600),
    forceRating: newtons(4000),
    arm: { low: metres(0.4), high: metres(0.8) },
    directions: 'both ways',
    followsTravel: true,
    sideLoad: 'balanced',
    facings: ['up', 'side', 'down'],
    reach: metres(1.5),
    needs: ['structure'],
    setUpTime: seconds(240),
    headKinds: ['inline', 'right-angle', 'open-centre'],
    ...change.facts,
  };
  return { ...changed(sampleBase('SR-1', 'sample twin-point arm'), change), role: 'restraint', facts };
}

export function sampleLimiter(change: SampleChange<OptionFacts> = {}): OptionModel {
  const facts: OptionFacts = {
    kind: 'torque limiter',
    lowest: newtonMetres(10),
    highest: newtonMetres(120),
    error: ratio(0.1),
    overshoot: newtonMetres(2),
    step: newtonMetres(2),
    bothDirections: true,
    input: square('20', 'female'),
    output: square('20', 'male'),
    setUpTime: seconds(60),
    sits: 'after drive',
    electronic: false,
    ...change.facts,
  };
  return { ...changed(sampleBase('SL-1', 'sample limiter'), change), role: 'option', facts };
}

export function sampleCounter(change: SampleChange<OptionFacts> = {}): OptionModel {
  const facts: OptionFacts = {
    kind: 'turns counter',
    highestTurns: 999,
    setUpTime: seconds(30),
    sits: 'clip-on',
    electronic: false,
    ...change.facts,
  };
  return { ...changed(sampleBase('SC-1', 'sample counter'), change), role: 'option', facts };
}
