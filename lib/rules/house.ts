/*
 * House rules: kinds of rules whose values and sentences are data of the house, customer or site.
 * Invariant: the sentence printed is the house's own; a kind that is not used says nothing.
 * Not here: editing house rules.
 * Read next: all-rules.ts.
 */

import type { HouseRule } from '#lib/duty/site.ts';
import type { RestraintModel } from '#lib/equipment/model.ts';
import { inUsUnits } from '#lib/units/format-quantity.ts';
import { figure } from '#lib/units/say-figure.ts';
import { brokenRule, SOURCE, siteWith, wordsOf } from './broken-rule.ts';
import type { LineFacts, PartFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, said } from './sample-facts.ts';
import { sampleDrive, sampleHead, sampleRestraint } from './sample-parts.ts';

/** Anchors that count as pipework. */
const PIPEWORK: readonly string[] = ['large pipe', 'flange'];

interface Anchored {
  readonly facts: LineFacts;
  readonly needs: readonly string[];
  readonly kind: 'no-restraint-to' | 'no-chain-to';
}

/** The rule against an anchor that would be used: the only one that the restraint can have, or the one that stands there. */
function anchoredAgainst({ facts, needs, kind }: Anchored): HouseRule | undefined {
  return brokenRule(facts, kind, (value) => {
    const banned = value === 'pipework' || value === 'pipe' ? PIPEWORK : [value];
    const wanted = needs.filter((need) => !banned.includes(need));
    return (
      needs.length > 0 &&
      (wanted.length === 0 || (banned.includes(facts.place.anchor) && needs.includes(facts.place.anchor)))
    );
  });
}

const restraintTo = (facts: LineFacts, needs: readonly string[]): HouseRule | undefined =>
  anchoredAgainst({ facts, needs, kind: 'no-restraint-to' });

const chained = ({ part }: PartFacts): RestraintModel | undefined =>
  part.role === 'restraint' && part.facts.kind === 'reaction arm with chain' ? part : undefined;

const chainTo = (facts: PartFacts): HouseRule | undefined => {
  const needs = chained(facts)?.facts.needs;
  return needs && anchoredAgainst({ facts, needs, kind: 'no-chain-to' });
};

export const HOUSE_RULES: readonly Rule[] = [
  {
    id: 'house-no-source',
    topic: 'house',
    title: 'The house keeps a power source out',
    scope: 'part',
    severity: 'refusal',
    source: SOURCE,
    speaksOf: ['house_rules', 'drive'],
    speaks: (facts) => {
      const { part } = facts;
      return (
        part.role === 'drive' &&
        brokenRule(facts, 'no-source', (value) => value === part.facts.power.kind) !== undefined
      );
    },
    sentence: (facts) => {
      const { part } = facts;
      const rule =
        part.role === 'drive' ? brokenRule(facts, 'no-source', (value) => value === part.facts.power.kind) : undefined;
      return `${wordsOf(rule)} ${part.name} ${part.number} is left out.`;
    },
    examples: () => [
      {
        name: 'no battery',
        facts: { ...lineFacts({ site: siteWith('no-source', 'battery') }), part: sampleDrive() },
        speaks: true,
      },
      {
        name: 'no petrol',
        facts: { ...lineFacts({ site: siteWith('no-source', 'petrol') }), part: sampleDrive() },
        speaks: false,
      },
    ],
  },
  {
    id: 'house-no-restraint-kind',
    topic: 'house',
    title: 'The house keeps a kind of restraint out',
    scope: 'part',
    severity: 'refusal',
    source: SOURCE,
    speaksOf: ['house_rules', 'restraint'],
    speaks: (facts) => {
      const { part } = facts;
      return (
        part.role === 'restraint' &&
        brokenRule(facts, 'no-restraint-kind', (value) => value === part.facts.kind) !== undefined
      );
    },
    sentence: (facts) => {
      const { part } = facts;
      const rule =
        part.role === 'restraint'
          ? brokenRule(facts, 'no-restraint-kind', (value) => value === part.facts.kind)
          : undefined;
      return `${wordsOf(rule)} ${part.name} ${part.number} is left out.`;
    },
    examples: () => [
      {
        name: 'kept out',
        facts: { ...lineFacts({ site: siteWith('no-restraint-kind', 'twin-point arm') }), part: sampleRestraint() },
        speaks: true,
      },
      {
        name: 'another kind',
        facts: { ...lineFacts({ site: siteWith('no-restraint-kind', 'ground plate') }), part: sampleRestraint() },
        speaks: false,
      },
    ],
  },
  {
    id: 'house-no-restraint-to',
    topic: 'house',
    title: 'The house keeps restraints off an anchor',
    scope: 'part',
    severity: 'refusal',
    source: SOURCE,
    speaksOf: ['house_rules', 'anchor', 'restraint'],
    speaks: (facts) => facts.part.role === 'restraint' && restraintTo(facts, facts.part.facts.needs) !== undefined,
    sentence: (facts) => {
      const rule = facts.part.role === 'restraint' ? restraintTo(facts, facts.part.facts.needs) : undefined;
      return `${wordsOf(rule)} ${facts.part.name} ${facts.part.number} would be anchored there.`;
    },
    examples: () => {
      const onPipe = sampleRestraint({ facts: { needs: ['structure', 'large pipe'] } });
      return [
        {
          name: 'only pipe there',
          facts: {
            ...lineFacts({ site: siteWith('no-restraint-to', 'pipework'), place: { anchor: said('large pipe') } }),
            part: onPipe,
          },
          speaks: true,
        },
        {
          name: 'structure there',
          facts: { ...lineFacts({ site: siteWith('no-restraint-to', 'pipework') }), part: onPipe },
          speaks: false,
        },
      ];
    },
  },
  {
    id: 'house-no-chain-to',
    topic: 'house',
    title: 'The house lays no chain around an anchor',
    scope: 'part',
    severity: 'refusal',
    source: SOURCE,
    speaksOf: ['house_rules', 'anchor', 'restraint'],
    speaks: (facts) => chainTo(facts) !== undefined,
    sentence: (facts) => `${wordsOf(chainTo(facts))} ${facts.part.name} ${facts.part.number} would be chained there.`,
    examples: () => {
      const at = { site: siteWith('no-chain-to', 'pipework'), place: { anchor: said('large pipe') } };
      const needs = ['structure', 'large pipe'];
      return [
        {
          name: 'a chain to pipe',
          facts: { ...lineFacts(at), part: sampleRestraint({ facts: { kind: 'reaction arm with chain', needs } }) },
          speaks: true,
        },
        {
          name: 'a bar to pipe',
          facts: { ...lineFacts(at), part: sampleRestraint({ facts: { kind: 'reaction arm with fixed bar', needs } }) },
          speaks: false,
        },
      ];
    },
  },
  {
    id: 'house-max-lift',
    topic: 'house',
    title: 'The house limits the mass of a piece',
    scope: 'part',
    severity: 'refusal',
    source: SOURCE,
    speaksOf: ['house_rules'],
    speaks: (facts) =>
      brokenRule(facts, 'max-lift', (value) => facts.part.mass > Number.parseFloat(value)) !== undefined,
    sentence: (facts) =>
      `${wordsOf(brokenRule(facts, 'max-lift', (value) => facts.part.mass > Number.parseFloat(value)))} ${facts.part.name} ${facts.part.number} has ${figure({ si: `${facts.part.mass} kg`, us: inUsUnits('kg', facts.part.mass) })}.`,
    examples: () => [
      {
        name: 'too heavy',
        facts: { ...lineFacts({ site: siteWith('max-lift', '25 kg') }), part: sampleHead({ mass_kg: 30 }) },
        speaks: true,
      },
      {
        name: 'light',
        facts: { ...lineFacts({ site: siteWith('max-lift', '25 kg') }), part: sampleHead() },
        speaks: false,
      },
    ],
  },
  {
    id: 'house-persons-at-every-valve',
    topic: 'house',
    title: 'The house asks for persons at every valve',
    scope: 'line',
    severity: 'refusal',
    source: SOURCE,
    speaksOf: ['house_rules', 'persons_per_crew'],
    speaks: (facts) =>
      brokenRule(facts, 'persons-at-every-valve', (value) => facts.site.personsPerCrew < Number.parseFloat(value)) !==
      undefined,
    sentence: (facts) =>
      `${wordsOf(brokenRule(facts, 'persons-at-every-valve', (value) => facts.site.personsPerCrew < Number.parseFloat(value)))} The crews have ${facts.site.personsPerCrew}.`,
    examples: () => [
      { name: 'three asked', facts: lineFacts({ site: siteWith('persons-at-every-valve', '3') }), speaks: true },
      { name: 'two asked', facts: lineFacts({ site: siteWith('persons-at-every-valve', '2') }), speaks: false },
    ],
  },
];
