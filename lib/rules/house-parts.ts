/*
 * House rules that keep parts out or in by kind, class, load, noise and way of transport.
 * Invariant: the sentence printed is the house's own; a kind that is not used says nothing.
 * Not here: sources, restraints, persons and lifts (house.ts); editing house rules (services).
 * Read next: house.ts.
 */
import type { HouseRule } from '#lib/duty/site.ts';
import { DUTY_CLASSES } from '#lib/equipment/drive.ts';
import type { Model } from '#lib/equipment/model.ts';
import { decibels, metresPerSecondSquared } from '#lib/units/quantity.ts';
import { brokenRule, SOURCE, siteWith, wordsOf } from './broken-rule.ts';
import type { PartFacts } from './facts.ts';
import { countingRule } from './must-count.ts';
import type { Example, Rule, RuleOf } from './rule.ts';
import { lineFacts, sampleCore, stated } from './sample-facts.ts';
import { sampleCounter, sampleDrive, sampleHead, sampleLimiter, sampleWheelAdapter } from './sample-parts.ts';

type Kept = Pick<RuleOf<'part'>, 'id' | 'title' | 'speaksOf' | 'examples'> & {
  readonly kind: HouseRule['kind'];
  /** Whether a rule with this value keeps the part out. */
  readonly keepsOut: (facts: PartFacts, value: string) => boolean;
};

/** A rule on one part: left out, in the house's own words. */
function keptOut({ kind, keepsOut, ...row }: Kept): RuleOf<'part'> {
  const broken = (facts: PartFacts) => brokenRule(facts, kind, (value) => keepsOut(facts, value));
  return {
    ...row,
    topic: 'house',
    scope: 'part',
    severity: 'refusal',
    source: SOURCE,
    speaks: (facts) => broken(facts) !== undefined,
    sentence: (facts) => `${wordsOf(broken(facts))} ${facts.part.name} ${facts.part.number} is left out.`,
  };
}

/** A battery drive whose packs nobody described counts as one with lithium packs. */
const holdsLithium = (part: Model): boolean =>
  part.lithium !== undefined || (part.role === 'drive' && part.facts.power.kind === 'battery');

const classOf = (name: string): number => DUTY_CLASSES.findIndex((known) => known === name);

const example = (name: string, [kind, value]: readonly [HouseRule['kind'], string], part: Model) => ({
  speaking: (speaks: boolean): Example<PartFacts> => ({
    name,
    facts: { ...lineFacts({ site: siteWith(kind, value) }), part },
    speaks,
  }),
});

export const HOUSE_PART_RULES: readonly Rule[] = [
  keptOut({
    id: 'house-largest-class',
    title: 'The house limits the class of the drive',
    speaksOf: ['house_rules', 'drive'],
    kind: 'largest-class',
    keepsOut: ({ part }, value) =>
      part.role === 'drive' && classOf(value) >= 0 && classOf(part.facts.dutyClass) > classOf(value),
    examples: () => [
      example('a medium drive', ['largest-class', 'light'], sampleDrive({ facts: { dutyClass: 'medium' } })).speaking(
        true,
      ),
      example(
        'as large as allowed',
        ['largest-class', 'medium'],
        sampleDrive({ facts: { dutyClass: 'medium' } }),
      ).speaking(false),
    ],
  }),
  keptOut({
    id: 'house-no-head-kind',
    title: 'The house keeps a kind of head out',
    speaksOf: ['house_rules', 'head'],
    kind: 'no-head-kind',
    keepsOut: ({ part }, value) => part.role === 'head' && part.facts.kind === value,
    examples: () => [
      example('kept out', ['no-head-kind', 'inline'], sampleHead({ facts: { kind: 'inline' } })).speaking(true),
      example('another kind', ['no-head-kind', 'right-angle'], sampleHead({ facts: { kind: 'inline' } })).speaking(
        false,
      ),
    ],
  }),
  keptOut({
    id: 'house-no-adapter-kind',
    title: 'The house keeps a kind of adapter out',
    speaksOf: ['house_rules', 'adapter'],
    kind: 'no-adapter-kind',
    keepsOut: ({ part }, value) => part.role === 'adapter' && part.facts.kind === value,
    examples: () => [
      example(
        'kept out',
        ['no-adapter-kind', 'spoke driver'],
        sampleWheelAdapter({ facts: { kind: 'spoke driver' } }),
      ).speaking(true),
      example(
        'another kind',
        ['no-adapter-kind', 'peg plate'],
        sampleWheelAdapter({ facts: { kind: 'spoke driver' } }),
      ).speaking(false),
    ],
  }),
  keptOut({
    id: 'house-max-sound',
    title: 'The house limits how loud a drive is',
    speaksOf: ['house_rules', 'drive'],
    kind: 'max-sound',
    keepsOut: ({ part }, value) => part.role === 'drive' && part.facts.soundPressure > Number.parseFloat(value),
    examples: () => [
      example('too loud', ['max-sound', '80 dB'], sampleDrive({ facts: { soundPressure: decibels(92) } })).speaking(
        true,
      ),
      example('quiet', ['max-sound', '80 dB'], sampleDrive({ facts: { soundPressure: decibels(78) } })).speaking(false),
    ],
  }),
  keptOut({
    id: 'house-max-vibration',
    title: 'The house limits the vibration at the handle',
    speaksOf: ['house_rules', 'drive'],
    kind: 'max-vibration',
    keepsOut: ({ part }, value) => part.role === 'drive' && part.facts.vibration > Number.parseFloat(value),
    examples: () => [
      example(
        'too strong',
        ['max-vibration', '5'],
        sampleDrive({ facts: { vibration: metresPerSecondSquared(7) } }),
      ).speaking(true),
      example(
        'calm',
        ['max-vibration', '5'],
        sampleDrive({ facts: { vibration: metresPerSecondSquared(3) } }),
      ).speaking(false),
    ],
  }),
  keptOut({
    id: 'house-no-lithium-by',
    title: 'The house sends no lithium packs by a way of transport',
    speaksOf: ['house_rules', 'transport', 'drive'],
    kind: 'no-lithium-by',
    keepsOut: ({ part, site }, value) => holdsLithium(part) && site.transport === value,
    examples: () => {
      const part = sampleDrive();
      const byAir = { ...siteWith('no-lithium-by', 'air'), transport: 'air' as const };
      return [
        { name: 'packs by air', facts: { ...lineFacts({ site: byAir }), part }, speaks: true },
        example('packs by road', ['no-lithium-by', 'air'], part).speaking(false),
      ];
    },
  }),
  {
    id: 'house-always-limiter',
    topic: 'house',
    title: 'The house puts a torque limiter in every chain',
    scope: 'core',
    severity: 'refusal',
    source: SOURCE,
    speaksOf: ['house_rules', 'drive', 'option'],
    speaks: (facts) =>
      facts.core.figures.limiter === null && brokenRule(facts, 'always-limiter', () => true) !== undefined,
    sentence: (facts) =>
      `${wordsOf(brokenRule(facts, 'always-limiter', () => true))} ${facts.core.drive.number} with ${facts.core.head.number} has none.`,
    examples: () => [
      {
        name: 'none there',
        facts: { ...lineFacts({ site: siteWith('always-limiter', 'yes') }), core: sampleCore() },
        speaks: true,
      },
      { name: 'not asked', facts: { ...lineFacts(), core: sampleCore({ limiter: sampleLimiter() }) }, speaks: false },
    ],
  },
  {
    id: 'house-counter-above-turns',
    topic: 'house',
    title: 'The house counts strokes above some turns',
    scope: 'core',
    severity: 'refusal',
    source: SOURCE,
    speaksOf: ['house_rules', 'turns', 'option'],
    speaks: (facts) => facts.core.counter === null && countingRule(facts) !== undefined,
    sentence: (facts) =>
      `${wordsOf(countingRule(facts))} ${facts.line.tag} may take more: a turns counter is required.`,
    examples: () => {
      const asked = { site: siteWith('counter-above-turns', '20'), duty: { turns: stated('turn', 30) } };
      return [
        { name: 'more turns', facts: { ...lineFacts(asked), core: sampleCore() }, speaks: true },
        {
          name: 'counted',
          facts: { ...lineFacts(asked), core: sampleCore({ counter: sampleCounter() }) },
          speaks: false,
        },
      ];
    },
  },
];
