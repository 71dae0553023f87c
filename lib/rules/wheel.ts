/*
 * Rules about handwheels: diameter, spokes and dish against each adapter's facts.
 * Invariant: a range of sizes is judged case by case; kits puts cases and adapters together into a covering set.
 * Not here: nuts and squares (no-wheel.ts), torque on the wheel (duty).
 * Read next: no-wheel.ts.
 */
import type { AdapterModel } from '#lib/equipment/model.ts';
import type { WheelGrip } from '#lib/equipment/parts.ts';
import { degrees, metres } from '#lib/units/quantity.ts';
import type { CaseFacts, GripCase } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, SAMPLE_NUT, said, sampleGrip } from './sample-facts.ts';
import { sampleKey, sampleWheelAdapter } from './sample-parts.ts';
import { sayLength, sayPlain } from './say-number.ts';

const PRACTICE = 'common practice, no source';

type WheelCase = Extract<GripCase, { kind: 'wheel' }>;

function both(facts: CaseFacts): { readonly grip: WheelGrip; readonly wheel: WheelCase } | null {
  const grip = facts.adapter.facts.wheel;
  return grip === undefined || facts.gripCase.kind !== 'wheel' ? null : { grip, wheel: facts.gripCase };
}

const tellAdapter = (adapter: AdapterModel): string => `${adapter.name} ${adapter.number}`;

const onWheel = (change: Partial<WheelCase> = {}, adapter: AdapterModel = sampleWheelAdapter()): CaseFacts => ({
  ...lineFacts(),
  adapter,
  extensions: [],
  gripCase: { kind: 'wheel', diameter_m: 0.4, spokes: 4, dish_deg: 0, ...change },
});

export const WHEEL_RULES: readonly Rule[] = [
  {
    id: 'grip-nothing',
    topic: 'wheel',
    title: 'There must be something to grip',
    scope: 'line',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['driven_by'],
    speaks: ({ duty }) => duty.grip.kind === 'none',
    sentence: ({ line, duty }) =>
      `${line.tag}: there is nothing that an adapter can grip${duty.grip.remark === undefined ? '' : ` (${duty.grip.remark})`}; the Desk looks at it.`,
    examples: () => [
      { name: 'nothing', facts: lineFacts({ duty: { grip: sampleGrip({ kind: 'none' }) } }), speaks: true },
      { name: 'a wheel', facts: lineFacts(), speaks: false },
    ],
  },
  {
    id: 'grip-kind-of-adapter',
    topic: 'wheel',
    title: 'A wheel needs a wheel-side adapter, a nut a nut-side one',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['driven_by', 'adapter'],
    speaks: ({ part, duty }) =>
      part.role === 'adapter' &&
      ((duty.grip.kind === 'wheel' && part.facts.wheel === undefined) ||
        (duty.grip.kind === 'nut' && part.facts.sockets === undefined)),
    sentence: ({ part, line, duty }) =>
      `${line.tag} is turned by a ${duty.grip.kind}; ${part.name} ${part.number} does not grip one.`,
    examples: () => [
      { name: 'key on a wheel', facts: { ...lineFacts(), part: sampleKey() }, speaks: true },
      { name: 'peg plate on a wheel', facts: { ...lineFacts(), part: sampleWheelAdapter() }, speaks: false },
      {
        name: 'peg plate on a nut',
        facts: { ...lineFacts({ duty: { grip: SAMPLE_NUT } }), part: sampleWheelAdapter() },
        speaks: true,
      },
    ],
  },
  {
    id: 'wheel-diameter-within-adapter',
    topic: 'wheel',
    title: 'The wheel is within the diameters that the adapter takes',
    scope: 'case',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['wheel_diameter', 'adapter'],
    speaks: (facts) => {
      const on = both(facts);
      if (on === null) return false;
      return on.wheel.diameter_m < on.grip.diameter.low - 1e-9 || on.wheel.diameter_m > on.grip.diameter.high + 1e-9;
    },
    sentence: (facts) => {
      const on = both(facts);
      if (on === null) return '';
      return `${facts.line.tag}: a wheel of ${sayLength(on.wheel.diameter_m)} is outside the ${sayLength(on.grip.diameter.low)} to ${sayLength(on.grip.diameter.high)} of ${tellAdapter(facts.adapter)}.`;
    },
    examples: () => [
      { name: 'inside', facts: onWheel(), speaks: false },
      { name: 'at the very edge', facts: onWheel({ diameter_m: 0.5 }), speaks: false },
      { name: 'too large', facts: onWheel({ diameter_m: 0.6 }), speaks: true },
      { name: 'too small', facts: onWheel({ diameter_m: 0.2 }), speaks: true },
    ],
  },
  {
    id: 'wheel-spokes-within-adapter',
    topic: 'wheel',
    title: 'The wheel has a number of spokes that the adapter takes',
    scope: 'case',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['wheel_spokes', 'adapter'],
    speaks: (facts) => {
      const on = both(facts);
      if (on === null || on.wheel.spokes === null) return false;
      return on.wheel.spokes < on.grip.spokes.low || on.wheel.spokes > on.grip.spokes.high;
    },
    sentence: (facts) => {
      const on = both(facts);
      if (on === null) return '';
      return `${facts.line.tag}: a wheel with ${on.wheel.spokes ?? 'an unknown number of'} spokes is outside the ${on.grip.spokes.low} to ${on.grip.spokes.high} of ${tellAdapter(facts.adapter)}.`;
    },
    examples: () => [
      { name: 'four spokes', facts: onWheel(), speaks: false },
      { name: 'unknown', facts: onWheel({ spokes: null }), speaks: false },
      { name: 'solid disc', facts: onWheel({ spokes: 0 }), speaks: true },
      { name: 'eight spokes', facts: onWheel({ spokes: 8 }), speaks: true },
    ],
  },
  {
    id: 'wheel-dish-within-adapter',
    topic: 'wheel',
    title: 'The rim stands no further from the hub than the adapter follows',
    scope: 'case',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['wheel_dish', 'adapter'],
    speaks: (facts) => {
      const on = both(facts);
      return on !== null && on.wheel.dish_deg > on.grip.dishUpTo + 1e-9;
    },
    sentence: (facts) => {
      const on = both(facts);
      if (on === null) return '';
      return `${facts.line.tag}: a rim dished by ${sayPlain(on.wheel.dish_deg)}° is more than the ${sayPlain(on.grip.dishUpTo)}° of ${tellAdapter(facts.adapter)}.`;
    },
    examples: () => [
      { name: 'flat', facts: onWheel(), speaks: false },
      { name: 'dished', facts: onWheel({ dish_deg: 15 }), speaks: true },
      {
        name: 'dished, adapter follows',
        facts: onWheel(
          { dish_deg: 15 },
          sampleWheelAdapter({
            facts: {
              wheel: {
                diameter: { low: metres(0.3), high: metres(0.6) },
                spokes: { low: 3, high: 6 },
                dishUpTo: degrees(30),
                rimUpTo: metres(0.04),
              },
            },
          }),
        ),
        speaks: false,
      },
    ],
  },
  {
    id: 'wheel-spinner-off',
    topic: 'wheel',
    title: 'A spinner handle or knob comes off first',
    scope: 'line',
    severity: 'note',
    source: PRACTICE,
    speaksOf: ['notes'],
    speaks: ({ line }) => /spinner|crank handle|knob/i.test(line.notes ?? ''),
    sentence: ({ line }) => `${line.tag}: take the spinner or knob off the rim before the adapter goes on.`,
    examples: () => [
      { name: 'spinner', facts: lineFacts({ line: { notes: 'wheel with spinner' } }), speaks: true },
      { name: 'none', facts: lineFacts(), speaks: false },
    ],
  },
  {
    id: 'wheel-brittle-spokes',
    topic: 'wheel',
    title: 'A spoke driver on a cast-iron wheel goes up in small steps',
    scope: 'part',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['wheel_material', 'adapter'],
    speaks: ({ part, line }) =>
      part.role === 'adapter' &&
      part.facts.kind === 'spoke driver' &&
      /cast|grey|gray/i.test(line.interface.wheelMaterial?.value ?? ''),
    sentence: ({ part, line }) =>
      `${line.tag}: the wheel is cast iron and ${part.name} ${part.number} pushes on single spokes: look for cracks, go up in the smallest steps.`,
    examples: () => [
      {
        name: 'cast iron',
        facts: {
          ...lineFacts({ line: { interface: { wheelMaterial: said('cast iron') } } }),
          part: sampleWheelAdapter({ facts: { kind: 'spoke driver' } }),
        },
        speaks: true,
      },
      {
        name: 'not said',
        facts: { ...lineFacts(), part: sampleWheelAdapter({ facts: { kind: 'spoke driver' } }) },
        speaks: false,
      },
    ],
  },
  {
    id: 'wheel-plate-stays',
    topic: 'wheel',
    title: 'A bolt-on plate stays on the wheel while the valve is worked',
    scope: 'part',
    severity: 'note',
    source: PRACTICE,
    speaksOf: ['adapter'],
    speaks: ({ part }) => part.role === 'adapter' && part.facts.staysOnWheel,
    sentence: ({ part, line }) =>
      `${line.tag}: ${part.name} ${part.number} is bolted to the wheel and stays on for all strokes of the visit; take it off before leaving.`,
    examples: () => [
      {
        name: 'stays',
        facts: { ...lineFacts(), part: sampleWheelAdapter({ facts: { staysOnWheel: true } }) },
        speaks: true,
      },
      { name: 'does not', facts: { ...lineFacts(), part: sampleWheelAdapter() }, speaks: false },
    ],
  },
];
