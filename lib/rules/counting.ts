/*
 * Rules about counting turns.
 * Invariant: where counting is required a counter is part of every assembly and cannot be left out.
 * Not here: when counting is required (duty.countTurns).
 * Read next: people.ts.
 */
import type { Rule } from './rule.ts';
import { lineFacts, sampleCore, stated } from './sample-facts.ts';
import { sampleCounter } from './sample-parts.ts';
import { sayPlain } from './say-number.ts';

const PRACTICE = 'common practice, no source';

export const COUNTING_RULES: readonly Rule[] = [
  {
    id: 'counter-required',
    topic: 'counting',
    title: 'Long strokes and stops that must not be hit need a turns counter',
    scope: 'core',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['turns', 'end_stops', 'option'],
    speaks: ({ duty, core }) => duty.countTurns && core.counter === null,
    sentence: ({ line, duty }) =>
      `${line.tag} takes ${sayPlain(duty.turns.nominal)} turns or has an end that must not be hit under power: a turns counter is required.`,
    examples: () => [
      {
        name: 'required and missing',
        facts: { ...lineFacts({ duty: { countTurns: true } }), core: sampleCore() },
        speaks: true,
      },
      {
        name: 'required and there',
        facts: { ...lineFacts({ duty: { countTurns: true } }), core: sampleCore({ counter: sampleCounter() }) },
        speaks: false,
      },
      { name: 'not required', facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
    ],
  },
  {
    id: 'counter-counts-far-enough',
    topic: 'counting',
    title: 'The counter counts as far as the stroke goes',
    scope: 'part',
    severity: 'refusal',
    source: 'The part’s own rating',
    speaksOf: ['turns', 'option'],
    speaks: ({ part, duty }) =>
      part.role === 'option' &&
      part.facts.kind === 'turns counter' &&
      (part.facts.highestTurns ?? Number.POSITIVE_INFINITY) < duty.turns.high,
    sentence: ({ part, line, duty }) =>
      `${line.tag} may take ${sayPlain(duty.turns.high)} turns; ${part.name} ${part.number} counts to ${sayPlain(part.role === 'option' ? (part.facts.highestTurns ?? 0) : 0)}.`,
    examples: () => [
      {
        name: 'too short',
        facts: { ...lineFacts({ duty: { turns: stated('turn', 1200) } }), part: sampleCounter() },
        speaks: true,
      },
      { name: 'far enough', facts: { ...lineFacts(), part: sampleCounter() }, speaks: false },
    ],
  },
  {
    id: 'turns-not-known',
    topic: 'counting',
    title: 'Turns that are only a guess are counted by hand first',
    scope: 'line',
    severity: 'note',
    source: PRACTICE,
    speaksOf: ['turns'],
    speaks: ({ duty }) => ['rule of thumb', 'assumed'].includes(duty.turns.basis),
    sentence: ({ line, duty }) =>
      `${line.tag}: turns are a guess, ${sayPlain(duty.turns.low)} to ${sayPlain(duty.turns.high)}; expect the end anywhere in between.`,
    examples: () => [
      {
        name: 'rule of thumb',
        facts: lineFacts({ duty: { turns: { ...stated('turn', 40), basis: 'rule of thumb' } } }),
        speaks: true,
      },
      { name: 'stated', facts: lineFacts(), speaks: false },
    ],
  },
];
