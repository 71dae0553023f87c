/*
 * Rules about nuts, squares and what stands in a wheel's place: sockets with shape, size and wear.
 * Invariant: an unknown shape is tried against every socket of the size and told.
 * Not here: length of keys (buried.ts).
 * Read next: buried.ts.
 */
import type { CaseFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, SAMPLE_NUT, said } from './sample-facts.ts';
import { sampleKey } from './sample-parts.ts';
import { sayLength } from './say-number.ts';

const PRACTICE = 'common practice, no source';

function socketFits(facts: CaseFacts): boolean {
  const { gripCase, adapter } = facts;
  if (gripCase.kind !== 'nut') return true;
  return (adapter.facts.sockets ?? []).some((socket) => {
    const shapeFits = gripCase.shape === null || socket.shape === gripCase.shape;
    const across = gripCase.acrossFlats_m;
    const sizeFits =
      across === null || (across <= socket.acrossFlats + 1e-6 && across >= socket.acrossFlats - socket.slack - 1e-6);
    return shapeFits && sizeFits;
  });
}

const nutLine = (change: Parameters<typeof lineFacts>[0] = {}) =>
  lineFacts({ ...change, duty: { grip: SAMPLE_NUT, movement: 'keyed', ...change.duty } });

const onNut = (acrossFlats_m: number | null, shape: string | null): CaseFacts => ({
  ...nutLine(),
  adapter: sampleKey(),
  extensions: [],
  gripCase: { kind: 'nut', shape, acrossFlats_m, depth_m: 1.2 },
});

const drivenBy = (
  text: string,
  { line }: { readonly line: { readonly interface: { readonly drivenBy?: { readonly value: string } } } },
) => line.interface.drivenBy?.value === text;

export const NO_WHEEL_RULES: readonly Rule[] = [
  {
    id: 'nut-socket-fits',
    topic: 'no wheel',
    title: 'A socket of the nut’s shape and size is there',
    scope: 'case',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['nut_shape', 'nut_size', 'adapter'],
    speaks: (facts) => facts.adapter.facts.sockets !== undefined && !socketFits(facts),
    sentence: (facts) => {
      if (facts.gripCase.kind !== 'nut') return '';
      const { acrossFlats_m, shape } = facts.gripCase;
      const sockets = (facts.adapter.facts.sockets ?? []).map(
        (socket) => `${socket.shape} ${sayLength(socket.acrossFlats)}`,
      );
      const size = acrossFlats_m === null ? 'of unknown size' : `of ${sayLength(acrossFlats_m)}`;
      return `${facts.line.tag}: a ${shape ?? 'nut'} ${size} across flats fits no socket of ${facts.adapter.name} ${facts.adapter.number} (${sockets.join(', ')}).`;
    },
    examples: () => [
      { name: 'within slack', facts: onNut(0.028, 'square'), speaks: false },
      { name: 'too large', facts: onNut(0.032, 'square'), speaks: true },
      { name: 'too small', facts: onNut(0.025, 'square'), speaks: true },
      { name: 'another shape', facts: onNut(0.029, 'pentagon'), speaks: true },
      { name: 'unknown shape', facts: onNut(0.029, null), speaks: false },
    ],
  },
  {
    id: 'nut-rounded-needs-retention',
    topic: 'no wheel',
    title: 'A rounded nut is not driven by a loose socket',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['nut_wear', 'adapter'],
    speaks: ({ part, line }) =>
      part.role === 'adapter' &&
      part.facts.kind === 'drive socket' &&
      part.facts.retention === 'none' &&
      line.interface.nutWear?.value === 'rounded',
    sentence: ({ part, line }) =>
      `${line.tag}: the nut is rounded and ${part.name} ${part.number} is only pushed on: it would jump off under torque.`,
    examples: () => {
      const rounded = nutLine({ line: { interface: { nutWear: said('rounded') } } });
      const socket = sampleKey({ facts: { kind: 'drive socket' } });
      return [
        { name: 'loose socket', facts: { ...rounded, part: socket }, speaks: true },
        {
          name: 'clamped socket',
          facts: { ...rounded, part: sampleKey({ facts: { kind: 'drive socket', retention: 'clamped' } }) },
          speaks: false,
        },
        { name: 'good nut', facts: { ...nutLine(), part: socket }, speaks: false },
      ];
    },
  },
  {
    id: 'nut-worn',
    topic: 'no wheel',
    title: 'A worn nut takes the tightest socket and small steps',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['nut_wear'],
    speaks: ({ line }) => ['worn', 'rounded'].includes(line.interface.nutWear?.value ?? 'good'),
    sentence: ({ line }) =>
      `${line.tag}: the nut is ${line.interface.nutWear?.value}: try sockets for the tightest one, seat it fully, go up in small steps.`,
    examples: () => [
      { name: 'worn', facts: nutLine({ line: { interface: { nutWear: said('worn') } } }), speaks: true },
      { name: 'good', facts: nutLine({ line: { interface: { nutWear: said('good') } } }), speaks: false },
    ],
  },
  {
    id: 'nut-shape-unknown',
    topic: 'no wheel',
    title: 'Shape and size of the nut are asked',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['nut_shape', 'nut_size'],
    speaks: ({ duty }) =>
      duty.grip.kind === 'nut' && (duty.grip.nutShape === undefined || (duty.grip.nutSizes ?? []).length !== 1),
    sentence: ({ line, duty }) => {
      const sizes = (duty.grip.nutSizes ?? []).map((size) => sayLength(size.nominal));
      return `${line.tag}: the nut is not described fully (${duty.grip.nutShape ?? 'shape unknown'}, ${sizes.length === 0 ? 'size unknown' : sizes.join(' or ')}): the kit carries what covers it; measure across the flats.`;
    },
    examples: () => [
      {
        name: 'no shape',
        facts: nutLine({ duty: { grip: { kind: 'nut', wheelRises: 'no', stemRisesThroughWheel: 'no' } } }),
        speaks: true,
      },
      { name: 'all known', facts: nutLine(), speaks: false },
    ],
  },
  {
    id: 'instead-of-wheel-chain-wheel',
    topic: 'no wheel',
    title: 'A chain wheel is answered for what it is',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['driven_by'],
    speaks: (facts) => drivenBy('chain wheel', facts),
    sentence: ({ line }) =>
      `${line.tag} is worked by a chain wheel: take the chain and its guide off from a safe platform before anything is clamped to the wheel.`,
    examples: () => [
      {
        name: 'chain wheel',
        facts: lineFacts({ line: { interface: { drivenBy: said('chain wheel') } } }),
        speaks: true,
      },
      { name: 'handwheel', facts: lineFacts({ line: { interface: { drivenBy: said('handwheel') } } }), speaks: false },
    ],
  },
  {
    id: 'instead-of-wheel-pillar',
    topic: 'no wheel',
    title: 'A pillar or extension spindle has a weakest piece of its own',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['driven_by', 'spindle_size'],
    speaks: (facts) => drivenBy('pillar', facts) || drivenBy('extension spindle', facts),
    sentence: ({ line }) =>
      `${line.tag} is worked through a ${line.interface.drivenBy?.value}: its pins, couplings and bearings are weaker than the valve; look at them first and go up in small steps.`,
    examples: () => [
      { name: 'pillar', facts: lineFacts({ line: { interface: { drivenBy: said('pillar') } } }), speaks: true },
      { name: 'nut', facts: lineFacts({ line: { interface: { drivenBy: said('nut') } } }), speaks: false },
    ],
  },
  {
    id: 'instead-of-wheel-actuator',
    topic: 'no wheel',
    title: 'Another actuator is isolated before its hand drive is turned',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['driven_by'],
    speaks: (facts) => drivenBy('actuator hand drive', facts),
    sentence: ({ line }) =>
      `${line.tag} has an actuator: isolate and lock off its supply, engage the hand drive as its maker says, and keep to the hand drive’s own torque.`,
    examples: () => [
      {
        name: 'actuator',
        facts: lineFacts({ line: { interface: { drivenBy: said('actuator hand drive') } } }),
        speaks: true,
      },
      { name: 'handwheel', facts: lineFacts(), speaks: false },
    ],
  },
];
