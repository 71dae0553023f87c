/*
 * A sample line with its duty, site and chain, from which the rules' examples are made.
 * Invariant: the plain samples make no refusal speak; an example changes only what it speaks of.
 * Not here: sample parts (sample-parts.ts).
 * Read next: rule.ts.
 */
import type { DirectionDuty, Duty, Grip } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import { exactly, type Known, known } from '#lib/units/known-value.ts';
import { joules, newtonMetres, newtons, perMinute, ratio, seconds, type Unit } from '#lib/units/quantity.ts';
import type { Core, CoreDirection, CoreFigures, LineFacts, ReactionFacts, ReactionFigures } from './facts.ts';
import { placeOf } from './place-facts.ts';
import { SAMPLE_GEAR, sampleDrive, sampleHead, sampleRestraint } from './sample-parts.ts';

const STATED = { basis: 'stated', source: 'Sample of the rules.' } as const;
const ASSUMED = { basis: 'assumed', source: 'Sample of the rules, assumed.' } as const;

export function stated<U extends Unit>(unit: U, value: number): Known<U> {
  return exactly(unit, value, STATED);
}

export function ranged<U extends Unit>(unit: U, low: number, high: number): Known<U> {
  return known(unit, { low, nominal: (low + high) / 2, high }, ASSUMED);
}

export function said<Value>(value: Value): {
  readonly value: Value;
  readonly basis: 'stated';
  readonly source: string;
} {
  return { value, ...STATED };
}

export function sampleDirection(change: Partial<DirectionDuty> = {}): DirectionDuty {
  return {
    starting: stated('N·m', 150),
    running: stated('N·m', 80),
    neverExceed: { kind: 'stated', directions: ['opening', 'closing'], torque: stated('N·m', 400) },
    limiter: { low: newtonMetres(187), high: newtonMetres(400) },
    thrust: null,
    ...change,
  };
}

const SAMPLE_GRIP: Grip = {
  kind: 'wheel',
  wheelDiameter: stated('m', 0.4),
  wheelSpokes: { low: 4, high: 4 },
  wheelDish: stated('°', 0),
  wheelRises: 'no',
  stemRisesThroughWheel: 'no',
};

export function sampleDuty(change: Partial<Duty> = {}): Duty {
  return {
    tag: 'V-1',
    qty: 1,
    strokes: 2,
    movement: 'screw',
    opening: sampleDirection(),
    closing: sampleDirection(),
    turns: stated('turn', 40),
    bounds: [],
    thread: null,
    closes: 'clockwise',
    minStrokeTime: null,
    maxInputSpeed: stated('1/min', 60),
    grip: SAMPLE_GRIP,
    countTurns: false,
    seized: false,
    findings: [],
    steps: [],
    measureFirst: null,
    measureFirstEffect: null,
    ...change,
  };
}

export function sampleGrip(change: Partial<Grip>): Grip {
  return { ...SAMPLE_GRIP, ...change };
}

export const SAMPLE_NUT: Grip = {
  kind: 'nut',
  nutShape: 'square',
  nutSizes: [stated('m', 0.029)],
  depthToNut: stated('m', 1.2),
  wheelRises: 'no',
  stemRisesThroughWheel: 'no',
};

export function sampleLine(change: Partial<ScheduleLine> = {}): ScheduleLine {
  return {
    tag: 'V-1',
    qty: 1,
    strokes: 2,
    process: {},
    state: {},
    stem: {},
    torque: {},
    interface: {},
    place: { zone: said('none'), anchor: said('structure'), faces: said('up'), enclosed: said(false) },
    ...change,
  };
}

export function sampleSite(change: Partial<Site> = {}): Site {
  return {
    sourcesAllowed: ['battery', 'air', 'petrol'],
    airPressure: stated('Pa', 7e5),
    vehicleAccess: true,
    shiftHours: 8,
    crews: 1,
    personsPerCrew: 2,
    moveMinutes: 10,
    startsOn: '2030-03-04',
    days: 5,
    transport: 'road',
    operated: false,
    houseRules: [],
    ...change,
  };
}

/** Facts of the sample line; each piece can be changed. */
export function lineFacts(
  change: {
    readonly line?: Partial<ScheduleLine>;
    readonly place?: ScheduleLine['place'];
    readonly duty?: Partial<Duty>;
    readonly site?: Partial<Site>;
  } = {},
): LineFacts {
  const plain = sampleLine(change.line);
  const line = change.place === undefined ? plain : { ...plain, place: { ...plain.place, ...change.place } };
  const duty = sampleDuty(change.duty);
  const site = sampleSite(change.site);
  return { line, duty, site, place: placeOf({ line, duty, site }) };
}

export function sampleCoreDirection(change: Partial<CoreDirection> = {}): CoreDirection {
  return {
    ceiling: null,
    highest: newtonMetres(360),
    sure: newtonMetres(256),
    needed: newtonMetres(187),
    fastest: perMinute(24),
    speed: perMinute(22),
    strokeTime: { low: seconds(130), high: seconds(150) },
    ...change,
  };
}

export function sampleCore(
  change: Partial<Omit<Core, 'figures'>> & { readonly figures?: Partial<CoreFigures> } = {},
): Core {
  const { figures, ...parts } = change;
  return {
    drive: sampleDrive(),
    gear: SAMPLE_GEAR,
    gearIndex: 0,
    limiter: null,
    head: sampleHead(),
    counter: null,
    ...parts,
    figures: {
      totalRatio: 4,
      factor: { low: ratio(3.2), high: ratio(3.6) },
      stallAtValve: newtonMetres(360),
      stallAtDrive: newtonMetres(100),
      sureAtValve: newtonMetres(256),
      highestAtValve: newtonMetres(360),
      neverExceed: newtonMetres(400),
      limiterRequired: false,
      limiter: null,
      inputSpeed: perMinute(120),
      opening: sampleCoreDirection(),
      closing: sampleCoreDirection(),
      energyPerVisit: joules(40_000),
      runTime: seconds(240),
      supplyShare: 1,
      ...figures,
    },
  };
}

export function reactionFacts(
  change: Partial<Omit<ReactionFacts, 'reaction'>> & { readonly reaction?: Partial<ReactionFigures> } = {},
): ReactionFacts {
  const { reaction, ...facts } = change;
  return {
    ...lineFacts(),
    core: sampleCore(),
    restraint: sampleRestraint(),
    secondChain: null,
    ...facts,
    reaction: { arm_m: 0.8, force: newtons(650), sideLoad: newtons(0), ...reaction },
  };
}
