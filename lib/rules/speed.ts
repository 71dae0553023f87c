/*
 * Rules about speed, running time and direction.
 * Invariant: nothing buys speed past what the line or its gearbox permits.
 * Not here: surge figures (duty).
 * Read next: restraint.ts.
 */
import { celsius, metres, perMinute, seconds } from '#lib/units/quantity.ts';
import type { CoreFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, ranged, sampleCore, sampleCoreDirection, stated } from './sample-facts.ts';
import { sampleDrive, sampleHead } from './sample-parts.ts';
import { sayLength, sayMinutes, sayPlain, sayTemperatures } from './say-number.ts';
import { goesBothWays, whyBothWays } from './ways-of-working.ts';

const PRACTICE = 'common practice, no source';

const fastest = ({ core }: CoreFacts): number => Math.max(core.figures.opening.fastest, core.figures.closing.fastest);
const shortest = ({ core }: CoreFacts): number =>
  Math.min(core.figures.opening.strokeTime.low, core.figures.closing.strokeTime.low);

const fast = (): CoreFacts => ({
  ...lineFacts(),
  core: sampleCore({ figures: { opening: sampleCoreDirection({ fastest: perMinute(90) }) } }),
});

export const SPEED_RULES: readonly Rule[] = [
  {
    id: 'input-speed',
    topic: 'torque',
    title: 'The valve’s input is not turned faster than it may be',
    scope: 'core',
    severity: 'refusal',
    source: 'The line’s own limit; where none is given, common practice, no source',
    speaksOf: ['max_input_speed', 'drive', 'head'],
    speaks: (facts) => fastest(facts) > facts.duty.maxInputSpeed.nominal + 1e-9,
    sentence: (facts) =>
      `${facts.line.tag} may be turned at ${sayPlain(facts.duty.maxInputSpeed.nominal)} 1/min; ${facts.core.drive.number} in gear “${facts.core.gear.name}” with ${facts.core.head.number} turns it at ${sayPlain(fastest(facts))}.`,
    examples: () => [
      { name: 'too fast', facts: fast(), speaks: true },
      { name: 'slow enough', facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
    ],
  },
  {
    id: 'stroke-time',
    topic: 'torque',
    title: 'A stroke does not take less than its shortest permitted time',
    scope: 'core',
    severity: 'refusal',
    source: 'The line’s own limit against surge',
    speaksOf: ['min_stroke_time', 'drive', 'head'],
    speaks: (facts) => facts.duty.minStrokeTime !== null && shortest(facts) < facts.duty.minStrokeTime.nominal - 1e-9,
    sentence: (facts) =>
      `${facts.line.tag} must not be stroked in less than ${sayMinutes(facts.duty.minStrokeTime?.nominal ?? 0)}; ${facts.core.drive.number} in gear “${facts.core.gear.name}” with ${facts.core.head.number} would do it in ${sayMinutes(shortest(facts))}.`,
    examples: () => [
      {
        name: 'too short',
        facts: { ...lineFacts({ duty: { minStrokeTime: stated('s', 300) } }), core: sampleCore() },
        speaks: true,
      },
      {
        name: 'long enough',
        facts: { ...lineFacts({ duty: { minStrokeTime: stated('s', 60) } }), core: sampleCore() },
        speaks: false,
      },
    ],
  },
  {
    id: 'input-speed-uncertain',
    topic: 'torque',
    title: 'A permitted speed that is only a guess is asked for',
    scope: 'core',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['max_input_speed', 'drive'],
    speaks: (facts) =>
      fastest(facts) <= facts.duty.maxInputSpeed.nominal && fastest(facts) > facts.duty.maxInputSpeed.low,
    sentence: (facts) =>
      `${facts.line.tag}: the highest permitted speed may be as low as ${sayPlain(facts.duty.maxInputSpeed.low)} 1/min and the chain can turn at ${sayPlain(fastest(facts))}: keep the speed down until the maker’s figure is known.`,
    examples: () => [
      {
        name: 'in the range',
        facts: { ...lineFacts({ duty: { maxInputSpeed: ranged('1/min', 15, 40) } }), core: sampleCore() },
        speaks: true,
      },
      { name: 'known', facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
    ],
  },
  {
    id: 'head-input-speed',
    topic: 'torque',
    title: 'The head is not driven faster than it may be',
    scope: 'core',
    severity: 'refusal',
    source: 'The part’s own rating',
    speaksOf: ['head', 'drive'],
    speaks: ({ core }) => core.figures.inputSpeed > core.head.facts.maxInputSpeed + 1e-9,
    sentence: ({ core }) =>
      `Head ${core.head.number} takes ${sayPlain(core.head.facts.maxInputSpeed)} 1/min at its input; ${core.drive.number} in gear “${core.gear.name}” runs at ${sayPlain(core.figures.inputSpeed)}.`,
    examples: () => [
      {
        name: 'slow head',
        facts: { ...lineFacts(), core: sampleCore({ head: sampleHead({ facts: { maxInputSpeed: perMinute(100) } }) }) },
        speaks: true,
      },
      { name: 'fast enough', facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
    ],
  },
  {
    id: 'drive-reverses',
    topic: 'torque',
    title: 'A visit that goes both ways needs a drive that reverses',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['strokes', 'drive'],
    speaks: (facts) => facts.part.role === 'drive' && !facts.part.facts.reversible && goesBothWays(facts),
    sentence: ({ part, ...facts }) =>
      `${facts.line.tag} ${whyBothWays(facts)}; ${part.name} ${part.number} turns one way only.`,
    examples: () => [
      { name: 'one way', facts: { ...lineFacts(), part: sampleDrive({ facts: { reversible: false } }) }, speaks: true },
      {
        name: 'one stroke',
        facts: { ...lineFacts({ duty: { strokes: 1 } }), part: sampleDrive({ facts: { reversible: false } }) },
        speaks: false,
      },
    ],
  },
  {
    id: 'direction-unknown',
    topic: 'torque',
    title: 'A closing direction that nobody gave is tried gently first',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['closes'],
    speaks: ({ duty }) => duty.closes === 'unknown',
    sentence: ({ line }) =>
      `${line.tag}: nobody says which way it closes. Try by hand, a quarter turn each way, before the drive goes on; never take clockwise for granted.`,
    examples: () => [
      { name: 'unknown', facts: lineFacts({ duty: { closes: 'unknown' } }), speaks: true },
      { name: 'known', facts: lineFacts(), speaks: false },
    ],
  },
  {
    id: 'stem-overhauls',
    topic: 'torque',
    title: 'A drive never comes off a stem that may turn back by itself',
    scope: 'line',
    severity: 'warning',
    source: 'Self-locking of power screws: Shigley’s Mechanical Engineering Design, chapter 8, from memory',
    speaksOf: ['stem_thread'],
    speaks: ({ duty }) => duty.thread !== null && duty.thread.selfLocking !== 'yes',
    sentence: ({ line, duty }) =>
      `${line.tag}: the thread ${duty.thread?.selfLocking === 'no' ? 'does not lock itself' : 'may not lock itself'}: hold the wheel before the drive comes off, and never take the drive off under load.`,
    examples: () => {
      const thread = { meanDiameter: stated('m', 0.03), lead: stated('m', 0.02) };
      return [
        { name: 'not locking', facts: lineFacts({ duty: { thread: { ...thread, selfLocking: 'no' } } }), speaks: true },
        { name: 'locking', facts: lineFacts({ duty: { thread: { ...thread, selfLocking: 'yes' } } }), speaks: false },
      ];
    },
  },
  {
    id: 'rests-between',
    topic: 'torque',
    title: 'A drive rests after its longest run',
    scope: 'core',
    severity: 'note',
    source: 'The part’s own rating',
    speaksOf: ['turns', 'drive'],
    speaks: ({ core }) => core.figures.runTime > core.drive.facts.continuousRun,
    sentence: ({ line, core }) =>
      `${line.tag} takes ${sayMinutes(core.figures.runTime)} of running; ${core.drive.number} rests for ${sayMinutes(core.drive.facts.restAfterRun)} after each ${sayMinutes(core.drive.facts.continuousRun)}. The time planned holds the rests.`,
    examples: () => [
      {
        name: 'long',
        facts: { ...lineFacts(), core: sampleCore({ figures: { runTime: seconds(4000) } }) },
        speaks: true,
      },
      { name: 'short', facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
    ],
  },
  {
    id: 'drive-temperature',
    topic: 'place',
    title: 'The drive works at the temperature of the place',
    scope: 'part',
    severity: 'refusal',
    source: 'The part’s own rating',
    speaksOf: ['temperature', 'drive'],
    speaks: ({ part, site }) =>
      part.role === 'drive' &&
      site.temperature !== undefined &&
      (site.temperature.low < part.facts.lowestTemperature || site.temperature.high > part.facts.highestTemperature),
    sentence: ({ part, site }) => {
      const range =
        part.role === 'drive'
          ? sayTemperatures({ low: part.facts.lowestTemperature, high: part.facts.highestTemperature })
          : '';
      const has = sayTemperatures({ low: site.temperature?.low ?? 0, high: site.temperature?.high ?? 0 });
      return `The site has ${has}; ${part.name} ${part.number} works at ${range}.`;
    },
    examples: () => {
      const cold = lineFacts({ site: { temperature: ranged('°C', -25, -5) } });
      return [
        { name: 'too cold', facts: { ...cold, part: sampleDrive() }, speaks: true },
        {
          name: 'made for it',
          facts: { ...cold, part: sampleDrive({ facts: { lowestTemperature: celsius(-40) } }) },
          speaks: false,
        },
      ];
    },
  },
  {
    id: 'drive-altitude',
    topic: 'place',
    title: 'The drive works at the altitude of the place',
    scope: 'part',
    severity: 'refusal',
    source: 'The part’s own rating',
    speaksOf: ['altitude', 'drive'],
    speaks: ({ part, site }) => part.role === 'drive' && (site.altitude?.high ?? 0) > part.facts.highestAltitude,
    sentence: ({ part, site }) =>
      `The site lies at ${sayLength(site.altitude?.high ?? 0)}; ${part.name} ${part.number} works up to ${sayLength(part.role === 'drive' ? part.facts.highestAltitude : 0)}.`,
    examples: () => {
      const high = lineFacts({ site: { altitude: stated('m', 3500) } });
      return [
        { name: 'too high', facts: { ...high, part: sampleDrive() }, speaks: true },
        {
          name: 'made for it',
          facts: { ...high, part: sampleDrive({ facts: { highestAltitude: metres(4000) } }) },
          speaks: false,
        },
      ];
    },
  },
];
