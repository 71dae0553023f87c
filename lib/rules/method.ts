/*
 * Rules of method: how the work is done at the valve, as notes and warnings for the site sheet.
 * Invariant: method never decides which equipment fits.
 * Not here: counting turns (counting.ts).
 * Read next: counting.ts.
 */
import type { LineFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, said, stated } from './sample-facts.ts';
import { isPositionSeated, isStiff } from './ways-of-working.ts';

const PRACTICE = 'common practice, no source';

const type = ({ line }: LineFacts): string => line.valveType?.value ?? 'unknown';
const hasBackSeat = (facts: LineFacts): boolean => /gate|globe/.test(type(facts)) && facts.duty.movement === 'screw';

export const METHOD_RULES: readonly Rule[] = [
  {
    id: 'count-from-closed',
    topic: 'method',
    title: 'Turns are counted from the closed end',
    scope: 'line',
    severity: 'note',
    source: PRACTICE,
    speaksOf: ['turns', 'position'],
    speaks: ({ duty }) => duty.turns.high > 1,
    sentence: ({ line }) => `${line.tag}: count turns from the closed end and write them down each way.`,
    examples: () => [
      { name: 'many turns', facts: lineFacts(), speaks: true },
      { name: 'a quarter turn', facts: lineFacts({ duty: { turns: stated('turn', 0.25) } }), speaks: false },
    ],
  },
  {
    id: 'stop-short-of-ends',
    topic: 'method',
    title: 'Power stops short of both ends; the last turns are by hand',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['turns'],
    speaks: ({ duty }) => duty.grip.kind !== 'none',
    sentence: ({ line }) => `${line.tag}: stop the drive short of both ends and do the last turns by hand.`,
    examples: () => [
      { name: 'any valve', facts: lineFacts(), speaks: true },
      {
        name: 'nothing to turn',
        facts: lineFacts({ duty: { grip: { kind: 'none', wheelRises: 'no', stemRisesThroughWheel: 'no' } } }),
        speaks: false,
      },
    ],
  },
  {
    id: 'never-back-seat',
    topic: 'method',
    title: 'Never back-seat under power',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['valve_type'],
    speaks: hasBackSeat,
    sentence: ({ line }) =>
      `${line.tag}: do not drive it against its back seat; open to the end by hand and turn back a little.`,
    examples: () => [
      { name: 'gate', facts: lineFacts({ line: { valveType: said('gate') } }), speaks: true },
      { name: 'ball', facts: lineFacts({ line: { valveType: said('ball') } }), speaks: false },
    ],
  },
  {
    id: 'position-seated',
    topic: 'method',
    title: 'Position-seated valves and gearbox stops are not torqued',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['valve_type', 'gearbox'],
    speaks: isPositionSeated,
    sentence: ({ line }) =>
      `${line.tag} closes by position: stop at the mark or stop and do not torque it; the stop of a gearbox is not a seat.`,
    examples: () => [
      { name: 'butterfly', facts: lineFacts({ line: { valveType: said('butterfly') } }), speaks: true },
      { name: 'penstock', facts: lineFacts({ line: { valveType: said('penstock') } }), speaks: true },
      { name: 'wedge gate', facts: lineFacts({ line: { valveType: said('wedge gate') } }), speaks: false },
    ],
  },
  {
    id: 'ventilate-first',
    topic: 'method',
    title: 'An enclosed place is tested and ventilated before and during the work',
    scope: 'line',
    severity: 'warning',
    source:
      'UK HSE INDG258 and US OSHA 29 CFR 1910.146 on confined spaces, from memory; the rules of the place go first',
    speaksOf: ['enclosed'],
    speaks: ({ place }) => place.enclosed,
    sentence: ({ line }) =>
      `${line.tag} lies in an enclosed place: the air is tested before anyone enters and while they work, and it is ventilated; no entry without the permit of the place and somebody outside.`,
    examples: () => [
      { name: 'chamber', facts: lineFacts({ line: { place: { enclosed: said(true) } } }), speaks: true },
      { name: 'open air', facts: lineFacts(), speaks: false },
    ],
  },
  {
    id: 'by-pass-first',
    topic: 'method',
    title: 'By-pass first',
    scope: 'line',
    severity: 'note',
    source: PRACTICE,
    speaksOf: ['bypass'],
    speaks: ({ line }) => line.state.bypass?.value === true,
    sentence: ({ line }) => `${line.tag} has a by-pass: equalise through it before the main valve is opened.`,
    examples: () => [
      { name: 'by-pass', facts: lineFacts({ line: { state: { bypass: said(true) } } }), speaks: true },
      { name: 'none', facts: lineFacts(), speaks: false },
    ],
  },
  {
    id: 'to-and-fro',
    topic: 'method',
    title: 'A stiff valve is worked to and fro',
    scope: 'line',
    severity: 'note',
    source: PRACTICE,
    speaksOf: ['condition', 'last_operated'],
    speaks: isStiff,
    sentence: ({ line }) =>
      `${line.tag} is or may be stiff: a few turns on, half back, and again; the time planned allows for it. Do not force it.`,
    examples: () => [
      { name: 'stiff', facts: lineFacts({ line: { state: { condition: said('stiff') } } }), speaks: true },
      { name: 'not moved for years', facts: lineFacts({ line: { state: { lastOperated: said(12) } } }), speaks: true },
      { name: 'last moved in 2019', facts: lineFacts({ line: { state: { lastOperated: said(2019) } } }), speaks: true },
      {
        name: 'last moved in 2029',
        facts: lineFacts({ line: { state: { lastOperated: said(2029) } } }),
        speaks: false,
      },
      { name: 'free', facts: lineFacts({ line: { state: { condition: said('free') } } }), speaks: false },
    ],
  },
  {
    id: 'try-by-hand',
    topic: 'method',
    title: 'Try by hand first, nobody in line with the stem',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: [],
    speaks: ({ duty }) => duty.grip.kind !== 'none' && !duty.seized,
    sentence: ({ line }) =>
      `${line.tag}: try by hand first; nobody in line with the stem; start low, raise in steps; after a stall release slowly and reverse to relieve.`,
    examples: () => [
      { name: 'any valve', facts: lineFacts(), speaks: true },
      { name: 'seized', facts: lineFacts({ duty: { seized: true } }), speaks: false },
    ],
  },
  {
    id: 'leave-as-agreed',
    topic: 'method',
    title: 'The valve is left where the customer wants it',
    scope: 'line',
    severity: 'note',
    source: PRACTICE,
    speaksOf: ['leave_at', 'normal_position'],
    speaks: ({ line }) => line.state.leaveAt !== undefined || line.state.normalPosition !== undefined,
    sentence: ({ line }) =>
      `${line.tag}: leave it ${line.state.leaveAt?.value ?? line.state.normalPosition?.value} and write down the position it was found in.`,
    examples: () => [
      { name: 'said', facts: lineFacts({ line: { state: { normalPosition: said('open') } } }), speaks: true },
      { name: 'not said', facts: lineFacts(), speaks: false },
    ],
  },
  {
    id: 'reverse-action',
    topic: 'method',
    title: 'A reverse-acting valve closes when others open',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['action'],
    speaks: ({ line }) => line.action?.value === 'reverse',
    sentence: ({ line }) =>
      `${line.tag} is reverse-acting: the stem going in opens it. Check twice before a direction is selected.`,
    examples: () => [
      { name: 'reverse', facts: lineFacts({ line: { action: said('reverse') } }), speaks: true },
      { name: 'direct', facts: lineFacts({ line: { action: said('direct') } }), speaks: false },
    ],
  },
];
