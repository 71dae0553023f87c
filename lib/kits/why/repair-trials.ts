/*
 * Changes worth trying for a line that cannot be served, from the cheapest to the dearest, each with its words and how it is carried out.
 * Invariant: a trial changes facts only, and whichever facts it is given; whether it helps is for the search to say. No limit of a valve is raised by a step.
 * Not here: running the trials (repairs.ts), changes of the place (place-trials.ts).
 * Read next: repairs.ts, repair-step.ts.
 */
import { isRaisedBound } from '#lib/duty/borne-torque.ts';
import type { DirectionDuty, Duty } from '#lib/duty/duty.ts';
import { idealWindow } from '#lib/duty/never-exceed.ts';
import { POWER_SOURCES } from '#lib/duty/site.ts';
import { RULES_OF } from '#lib/rules/all-rules.ts';
import type { LineFacts } from '#lib/rules/facts.ts';
import { sayLength, sayPlain, sayPressure, sayTorque, sayTorqueDown } from '#lib/rules/say-number.ts';
import { exactly, type Known, known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { ClassQuestion } from '../search-class.ts';
import { placeTrials } from './place-trials.ts';
import { cell, type RepairStep, siteValue } from './repair-step.ts';
import { changed, fixed, leastThat, mostThat, TRIED, type Trial } from './trial.ts';

const SIX_BAR = sayPressure(6e5);
const LEAST_SHARE = 0.005;
const WIDEST_SHARE = 0.2;
/** No valve is turned faster by hand-carried equipment. House practice, no source. */
const FASTEST = 120;

export function trialsFor({
  question,
  conflict,
}: {
  readonly question: ClassQuestion;
  readonly conflict: readonly string[];
}): readonly Trial[] {
  const { facts } = question;
  const ofGrip = [...releaseTrials(question), ...measureTrials(facts)];
  // Whether an adapter takes a size has nothing to do with torque, site or place: none of them helps there.
  if (conflict.length > 0 && conflict.every((id) => RULES_OF.case.some((rule) => rule.id === id))) return ofGrip;
  return [...ofGrip, ...siteTrials(facts), ...placeTrials(question), ...torqueTrials(facts, conflict)];
}

function releaseTrials({ wishes }: ClassQuestion): readonly Trial[] {
  if (wishes.length === 0) return [];
  return [
    fixed({
      id: 'release',
      wishes: 'none',
      sentence: 'It can be served when it is not held to that part.',
      clause: 'it is not held to that part',
      to: (facts) => facts,
      steps: [{ kind: 'release', parts: wishes.map(({ number }) => number) }],
    }),
  ];
}

interface Grips {
  readonly id: string;
  readonly cost: string;
  readonly sentence: string;
  readonly clause: string;
  readonly grip: Partial<Duty['grip']>;
  readonly step: RepairStep;
}

function measureTrials(facts: LineFacts): readonly Trial[] {
  return gripChanges(facts).map(({ grip, step, ...words }) =>
    fixed({
      ...words,
      steps: [step],
      to: (at) => changed(at, { duty: { ...at.duty, grip: { ...at.duty.grip, ...grip } } }),
    }),
  );
}

const millimetres = (value: number): string => `${Math.round(value * 1000)} mm`;

function gripChanges({ duty: { grip } }: LineFacts): readonly Grips[] {
  const found: Grips[] = [...sizeChanges(grip)];
  if (grip.stemRisesThroughWheel === 'maybe') {
    found.push({
      id: 'stem-stays-below-wheel',
      cost: 'a look',
      sentence: 'Find out whether the stem rises through the wheel: where it does not, it can be served.',
      clause: 'the stem does not rise through the wheel',
      grip: { stemRisesThroughWheel: 'no' },
      step: cell('stem', 'non-rising'),
    });
  }
  if (grip.wheelRises === 'maybe') {
    found.push({
      id: 'wheel-stays',
      cost: 'a look',
      sentence: 'Find out whether the wheel rises with its stem: where it does not, it can be served.',
      clause: 'the wheel does not rise with its stem',
      grip: { wheelRises: 'no' },
      step: cell('stem', 'non-rising'),
    });
  }
  return found;
}

function sizeChanges(grip: Duty['grip']): readonly Grips[] {
  const { wheelDiameter: wheel, wheelSpokes, depthToNut: depth, nutSizes = [] } = grip;
  const found: Grips[] = [];
  if (wheel !== undefined && wheel.low < wheel.high) {
    found.push({
      id: 'measure-wheel',
      cost: 'a measurement',
      sentence: `Measure the wheel: ${sayLength(wheel.low)} to ${sayLength(wheel.high)} is too wide a range; at about ${sayLength(wheel.nominal)} it can be served.`,
      clause: `the wheel measures ${sayLength(wheel.nominal)}`,
      grip: { wheelDiameter: atNominal(wheel) },
      step: cell('wheel_diameter', millimetres(wheel.nominal)),
    });
  }
  if (wheelSpokes !== undefined && wheelSpokes.low < wheelSpokes.high) {
    const spokes = Math.round((wheelSpokes.low + wheelSpokes.high) / 2);
    found.push({
      id: 'count-spokes',
      cost: 'a look',
      sentence: `Count the spokes: ${wheelSpokes.low} to ${wheelSpokes.high} is too wide a range; with ${spokes} it can be served.`,
      clause: `the wheel has ${spokes} spokes`,
      grip: { wheelSpokes: { low: spokes, high: spokes } },
      step: cell('wheel_spokes', String(spokes)),
    });
  }
  const [likeliest] = nutSizes;
  if (likeliest !== undefined && nutSizes.length > 1) {
    found.push({
      id: 'measure-nut',
      cost: 'a measurement',
      sentence: `Measure the nut: several sizes are possible; at ${sayLength(likeliest.nominal)} across flats it can be served.`,
      clause: `the nut measures ${sayLength(likeliest.nominal)} across flats`,
      grip: { nutSizes: [likeliest] },
      step: cell('nut_size', millimetres(likeliest.nominal)),
    });
  }
  if (depth !== undefined && depth.low < depth.high) {
    found.push({
      id: 'measure-depth',
      cost: 'a measurement',
      sentence: `Measure the depth to the nut: at about ${sayLength(depth.nominal)} it can be served.`,
      clause: `the nut lies ${sayLength(depth.nominal)} deep`,
      grip: { depthToNut: atNominal(depth) },
      step: cell('depth_to_nut', millimetres(depth.nominal)),
    });
  }
  return found;
}

function atNominal<U extends Unit>(value: Known<U>): Known<U> {
  return exactly(value.unit, value.nominal, TRIED);
}

function siteTrials({ site }: LineFacts): readonly Trial[] {
  const sources = POWER_SOURCES.filter((source) => !site.sourcesAllowed.includes(source)).map((source): Trial => {
    const brings = source === 'air' && site.airPressure === undefined;
    const air = brings ? { airPressure: exactly('Pa', 6e5, TRIED) } : {};
    const clause = `the site allows ${source}${brings ? ` and gives ${SIX_BAR} of it` : ''}`;
    return fixed({
      id: `allow-${source}`,
      sentence: `It can be served if ${clause}.`,
      clause,
      to: (at) => changed(at, { site: { ...at.site, sourcesAllowed: [...at.site.sourcesAllowed, source], ...air } }),
      steps: [
        siteValue('sources_allowed', [...site.sourcesAllowed, source]),
        ...(brings ? [siteValue('air_pressure', '6 bar')] : []),
      ],
    });
  });
  const rules = site.houseRules.map((rule) =>
    fixed({
      id: `without-rule-${rule.id}`,
      sentence: `It can be served without the house rule “${rule.sentence}”`,
      clause: `the house rule “${rule.sentence.replace(/\.$/, '')}” is set aside`,
      to: (at) =>
        changed(at, { site: { ...at.site, houseRules: at.site.houseRules.filter((other) => other.id !== rule.id) } }),
    }),
  );
  return [...sources, ...airTrial(site), ...rules];
}

function airTrial(site: LineFacts['site']): readonly Trial[] {
  const { airPressure } = site;
  const lacks = airPressure === undefined || airPressure.low < 6e5;
  if (!site.sourcesAllowed.includes('air') || !lacks) return [];
  return [
    fixed({
      id: 'air-pressure',
      sentence: `It can be served with compressed air of ${SIX_BAR} at the valve${airPressure === undefined ? ', of which the site says nothing' : ''}.`,
      clause: `compressed air of ${SIX_BAR} is at the valve`,
      to: (at) => changed(at, { site: { ...at.site, airPressure: exactly('Pa', 6e5, TRIED) } }),
      steps: [siteValue('air_pressure', '6 bar')],
    }),
  ];
}

function torqueTrials({ duty, line }: LineFacts, conflict: readonly string[]): readonly Trial[] {
  const most = Math.max(duty.opening.starting.high, duty.closing.starting.high);
  const lowest = Math.min(duty.opening.neverExceed.torque.low, duty.closing.neverExceed.torque.low);
  return [
    torqueTrial({ most, running: line.torque.running?.high }),
    {
      id: 'may-see-more',
      cost: 'the maker’s figure',
      find: (works) => leastThat({ low: 1, high: 8, step: 0.05, works }),
      widest: 8,
      at: (factor) => ({
        to: (at) => scaledCeilings(at, factor),
        sentence: `It can be served if the valve may see ${sayTorque(lowest * factor)} (known now: ${sayTorque(lowest)}), on its maker’s word.`,
        clause: `the valve may see ${sayTorque(lowest * factor)} on its maker’s word`,
      }),
    },
    ...(conflict.some((id) => ['input-speed', 'stroke-time', 'extension-speed'].includes(id))
      ? [speedTrial(duty.maxInputSpeed.nominal)]
      : []),
  ];
}

/** A running torque that is not said follows from the starting torque. */
function torqueTrial({ most, running }: { readonly most: number; readonly running: number | undefined }): Trial {
  return {
    id: 'torque-at-most',
    cost: 'a torque reading',
    find: (works) => mostThat({ low: LEAST_SHARE, high: 1, works }),
    widest: WIDEST_SHARE,
    at: (share) => ({
      to: (facts) => scaledTorques(facts, share),
      sentence: `It can be served at a torque of at most ${sayTorqueDown(most * share)} (planned: ${sayTorque(most)}).`,
      clause: `the torque is at most ${sayTorqueDown(most * share)}`,
      steps: [
        cell('starting_torque', `${cutOff(most * share)} Nm`),
        ...(running === undefined ? [] : [cell('running_torque', `${cutOff(running * share)} Nm`)]),
      ],
    }),
  };
}

function speedTrial(speed: number): Trial {
  const fastest = Math.max(10 * speed, FASTEST);
  return {
    id: 'may-turn-faster',
    cost: 'the maker’s figure',
    find: (works) => leastThat({ low: speed, high: fastest, step: 1, works }),
    widest: fastest,
    at: (value) => ({
      to: (at) =>
        changed(at, { duty: { ...at.duty, maxInputSpeed: exactly('1/min', value, TRIED), minStrokeTime: null } }),
      sentence: `It can be served if it may be turned at ${sayPlain(value)} 1/min (allowed now: ${sayPlain(speed)}).`,
      clause: `it may be turned at ${sayPlain(value)} 1/min`,
    }),
  };
}

/** A guessed bound that was raised to a torque that is said comes down with it. */
function scaledTorques(facts: LineFacts, share: number): LineFacts {
  const way = (one: DirectionDuty): DirectionDuty => {
    const { neverExceed } = one;
    return limited({
      ...one,
      starting: times(one.starting, share),
      running: times(one.running, share),
      neverExceed: isRaisedBound(neverExceed.torque)
        ? { ...neverExceed, torque: times(neverExceed.torque, share) }
        : neverExceed,
    });
  };
  const { duty } = facts;
  return changed(facts, { duty: { ...duty, opening: way(duty.opening), closing: way(duty.closing) } });
}

function scaledCeilings(facts: LineFacts, factor: number): LineFacts {
  const way = (one: DirectionDuty): DirectionDuty =>
    limited({
      ...one,
      neverExceed: { ...one.neverExceed, torque: { ...times(one.neverExceed.torque, factor), basis: 'stated' } },
    });
  const { duty } = facts;
  return changed(facts, { duty: { ...duty, opening: way(duty.opening), closing: way(duty.closing) } });
}

function limited(way: DirectionDuty): DirectionDuty {
  return { ...way, limiter: idealWindow({ starting: way.starting, limit: way.neverExceed.torque }) };
}

function times<U extends Unit>({ unit, low, nominal, high, basis, source }: Known<U>, factor: number): Known<U> {
  return known(unit, { low: low * factor, nominal: nominal * factor, high: high * factor }, { basis, source });
}

/** Three digits, never more than was tried. */
function cutOff(value: number): string {
  if (value <= 0) return '0';
  const step = 10 ** (Math.floor(Math.log10(value)) - 2);
  return String(Number((Math.floor(value / step + 1e-9) * step).toPrecision(3)));
}
