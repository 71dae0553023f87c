/*
 * For each kind of discrepancy that the checker of assemblies can tell, one way of being wrong that makes it speak.
 */
import type { AssemblyFacts } from '#lib/checking/chain.ts';
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type {
  Assembly,
  AssemblyFigures,
  AssemblyParts,
  DirectionSettings,
  LimiterSetting,
} from '#lib/equipment/assembly.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { AdapterFacts, RestraintFacts } from '#lib/equipment/parts.ts';
import { ranged, said, sampleGrip, stated } from '#lib/rules/sample-facts.ts';
import { SAMPLE_AIR, SAMPLE_PETROL, sampleCounter, sampleDrive, sampleHead } from '#lib/rules/sample-parts.ts';
import { decibels, kilograms, metres, newtonMetres } from '#lib/units/quantity.ts';
import { keyAssembly, wheelAssembly } from './sample-assemblies.ts';

const WHEEL = wheelAssembly();
const KEY = keyAssembly();

const assembly = (change: Partial<Assembly>, facts = WHEEL): AssemblyFacts => ({
  ...facts,
  assembly: { ...facts.assembly, ...change },
});
const parts = (change: Partial<AssemblyParts>, facts = WHEEL): AssemblyFacts =>
  assembly({ parts: { ...facts.assembly.parts, ...change } }, facts);
const figures = (change: Partial<AssemblyFigures>): AssemblyFacts =>
  assembly({ figures: { ...WHEEL.assembly.figures, ...change } });
const opening = (change: Partial<DirectionSettings>): AssemblyFacts =>
  assembly({ opening: { ...WHEEL.assembly.opening, ...change } });
const duty = (change: Partial<Duty>, facts = WHEEL): AssemblyFacts => ({
  ...facts,
  lineDuty: { ...facts.lineDuty, duty: { ...facts.lineDuty.duty, ...change } },
});
const line = (change: Partial<ScheduleLine>): AssemblyFacts => ({
  ...WHEEL,
  lineDuty: { ...WHEEL.lineDuty, line: { ...WHEEL.lineDuty.line, ...change } },
});
const place = (change: ScheduleLine['place']): AssemblyFacts =>
  line({ place: { ...WHEEL.lineDuty.line.place, ...change } });
const site = (change: Partial<Site>): AssemblyFacts => ({ ...WHEEL, site: { ...WHEEL.site, ...change } });
const models = (change: (one: Model) => Model): AssemblyFacts => ({ ...WHEEL, models: WHEEL.models.map(change) });
const model = (changed: Model): AssemblyFacts => models((one) => (one.number === changed.number ? changed : one));
const restraint = (change: Partial<RestraintFacts>): AssemblyFacts =>
  models((one) => (one.role === 'restraint' ? { ...one, facts: { ...one.facts, ...change } } : one));
const adapter = (change: Partial<AdapterFacts>): AssemblyFacts =>
  models((one) => (one.role === 'adapter' ? { ...one, facts: { ...one.facts, ...change } } : one));
const mark = (change: Partial<LimiterSetting>): AssemblyFacts => opening({ unseat: { ...UNSEAT, ...change } });

function given<Value>(value: Value | null | undefined): Value {
  if (value === null || value === undefined) throw new Error('The sample assembly lacks what its violations change.');
  return value;
}

const UNSEAT = given(WHEEL.assembly.opening.unseat);
const FIGURES = WHEEL.assembly.figures;
const [STEP] = WHEEL.assembly.steps;
const [FINDING] = WHEEL.assembly.findings;
const more = (value: number): number => value * 1.1;
const GRIP = WHEEL.lineDuty.duty.grip;

export const ASSEMBLY_VIOLATIONS: Readonly<Record<string, AssemblyFacts>> = {
  'assembly-part-unknown': parts({ head: 'SH-9' }),
  'assembly-gear-unknown': parts({ gear: 3 }),
  'assembly-joint': model(sampleHead({ facts: { input: { form: 'square', size: '40', gender: 'female' } } })),
  'assembly-part-overloaded': model(sampleHead({ facts: { torqueRating: newtonMetres(60) } })),
  'assembly-limiter-required': figures({ limiterRequired: false }),
  'assembly-limiter-missing': parts({ options: ['SC-1'] }),
  'assembly-counter-required': figures({ counterRequired: false }),
  'assembly-counter-missing': parts({ options: ['SL-1'] }),
  'assembly-counter-short': model(sampleCounter({ facts: { highestTurns: 40 } })),
  'assembly-restraint-weak': restraint({ torqueRating: newtonMetres(300) }),
  'assembly-plate-slips': restraint({
    kind: 'ground plate',
    plateSide: metres(0.9),
    weightOnPlate: kilograms(75),
  }),
  'assembly-shaft-whirl': adapter({
    length: { low: metres(1), high: metres(12) },
    section: { outer: metres(0.02), inner: metres(0) },
  }),
  'assembly-restraint-head': restraint({ headKinds: ['inline'] }),
  'assembly-restraint-one-way': parts({ accessories: [{ number: 'SP-8', count: 2 }] }),
  'assembly-restraint-travel': {
    ...restraint({ followsTravel: false }),
    lineDuty: duty({ grip: { ...GRIP, wheelRises: 'yes', travel: stated('m', 0.3) } }).lineDuty,
  },
  'assembly-adapter-side': duty({ grip: { ...GRIP, kind: 'nut' } }),
  'assembly-wheel-diameter': duty({ grip: { ...GRIP, wheelDiameter: stated('m', 0.3) } }),
  'assembly-wheel-spokes': duty({ grip: { ...GRIP, wheelSpokes: { low: 8, high: 8 } } }),
  'assembly-wheel-dish': duty({ grip: { ...GRIP, wheelDish: stated('°', 20) } }),
  'assembly-nut-socket': duty({ grip: { ...KEY.lineDuty.duty.grip, nutSizes: [stated('m', 0.06)] } }, KEY),
  'assembly-range-uncovered': parts({ adapters: ['SA-1'] }),
  'assembly-stem-head': duty({ grip: rising(0.08) }),
  'assembly-stem-part': duty({ grip: rising(0.08) }),
  'assembly-source-not-allowed': site({ sourcesAllowed: ['air'] }),
  'assembly-petrol-here': {
    ...model(sampleDrive({ facts: { power: SAMPLE_PETROL } })),
    lineDuty: place({ enclosed: said(true) }).lineDuty,
  },
  'assembly-air-missing': withoutAir(model(sampleDrive({ facts: { power: SAMPLE_AIR } }))),
  'assembly-too-loud': site({ noiseLimit: { ...stated('dB', 60), low: decibels(60) } }),
  'assembly-too-cold': site({ temperature: stated('°C', -30) }),
  'assembly-too-hot': site({ temperature: stated('°C', 55) }),
  'assembly-too-high-up': site({ altitude: stated('m', 4000) }),
  'assembly-marking': place({ zone: said('1') }),
  'assembly-no-room': place({ clearRadius: stated('m', 0.1) }),
  'assembly-no-headroom': place({ headroom: stated('m', 0.2) }),
  'assembly-restraint-facing': {
    ...restraint({ facings: ['up'] }),
    lineDuty: place({ faces: said('side') }).lineDuty,
  },
  'assembly-adapter-facing': {
    ...adapter({ holdsSideways: false }),
    lineDuty: place({ faces: said('side') }).lineDuty,
  },
  'assembly-house-rule': site({
    houseRules: [
      {
        kind: 'no-restraint-kind',
        value: 'reaction arm with chain',
        sentence: 'No chain to pipework.',
        id: 'no-chain',
      },
    ],
  }),
  'assembly-line-not-workable': duty({ seized: true }),
  'assembly-mark-without-limiter': parts({ options: ['SC-1'] }),
  'assembly-mark-step': mark({ step: newtonMetres(1) }),
  'assembly-mark-off-scale': mark({ ceiling: newtonMetres(UNSEAT.ceiling - 1) }),
  'assembly-mark-start': mark({ start: newtonMetres(UNSEAT.ceiling + UNSEAT.step) }),
  'assembly-mark-unsafe': mark({ ceiling: newtonMetres(UNSEAT.ceiling + 20 * UNSEAT.step) }),
  'assembly-mark-value': mark({ ceiling: newtonMetres(UNSEAT.ceiling - UNSEAT.step) }),
  'assembly-mark-at-valve': mark({ atValve: { start: newtonMetres(1), ceiling: newtonMetres(2) } }),
  'assembly-mark-covers': mark({ coversStarting: !UNSEAT.coversStarting }),
  'assembly-mark-missing': opening({ run: null }),
  'assembly-mark-purpose': opening({ seat: UNSEAT }),
  'assembly-direction': opening({ select: 'clockwise' }),
  'assembly-stall-at-valve': figures({ stallAtValve: newtonMetres(more(FIGURES.stallAtValve)) }),
  'assembly-highest-at-valve': figures({ highestAtValve: newtonMetres(more(FIGURES.highestAtValve)) }),
  'assembly-sure-at-valve': figures({ sureAtValve: newtonMetres(more(FIGURES.sureAtValve)) }),
  'assembly-total-ratio': figures({ totalRatio: more(FIGURES.totalRatio) }),
  'assembly-reaction-force': restraint({ arm: { low: metres(0.3), high: metres(0.8) } }),
  'assembly-side-load': restraint({ sideLoad: 'balanced' }),
  'assembly-set-up-time': parts({ adapterExtensions: [['SX-1'], []] }),
  'assembly-time-per-valve': duty({ strokes: 5 }),
  'assembly-energy': duty({ turns: ranged('turn', 36, 60) }),
  'assembly-mass': parts({
    accessories: [
      { number: 'SP-8', count: 3 },
      { number: 'SS-1', count: 1 },
    ],
  }),
  'assembly-heaviest-piece': model(sampleHead({ mass_kg: 40 })),
  'assembly-speed': model(
    sampleHead({
      facts: { efficiency: { ...sampleHead().facts.efficiency, low: sampleHead().facts.efficiency.high } },
    }),
  ),
  'assembly-stroke-time': duty({ turns: ranged('turn', 20, 48) }),
  'assembly-too-fast': duty({ maxInputSpeed: stated('1/min', 5) }),
  'assembly-stroke-too-short': duty({ minStrokeTime: stated('s', 3000) }),
  'assembly-chance': figures({ chance: FIGURES.chance / 2 }),
  'assembly-chance-range': figures({ chance: 1.5 }),
  'assembly-identity': assembly({ id: 'another' }),
  'assembly-refused': place({ zone: said('1') }),
  'assembly-finding-missing': assembly({ findings: WHEEL.assembly.findings.slice(1) }),
  'assembly-finding-unfounded': assembly({ findings: [...WHEEL.assembly.findings, given(FINDING)] }),
  'assembly-steps': assembly({ steps: WHEEL.assembly.steps.toReversed() }),
  'assembly-step-inputs': assembly({ steps: [{ ...given(STEP), inputs: [] }, ...WHEEL.assembly.steps.slice(1)] }),
  'assembly-step-input': duty({ opening: { ...WHEEL.lineDuty.duty.opening, running: ranged('N·m', 41, 90) } }),
  'assembly-step-result': model(sampleHead({ facts: { reverses: false, ratio: sampleHead().facts.efficiency.low } })),
};

function rising(stem: number): Duty['grip'] {
  return sampleGrip({
    wheelDiameter: GRIP.wheelDiameter ?? stated('m', 0.4),
    stemRisesThroughWheel: 'yes',
    stemDiameter: stated('m', stem),
    travel: stated('m', 0.2),
  });
}

function withoutAir(facts: AssemblyFacts): AssemblyFacts {
  const { airPressure: _airPressure, ...rest } = facts.site;
  return { ...facts, site: rest };
}
