import { describe, expect, it } from 'vitest';
import { checkOutcome } from '#lib/checking/check-outcome.ts';
import type { CrewDay } from '#lib/equipment/crew-day.ts';
import { kilograms, metresPerSecondSquared, seconds } from '#lib/units/quantity.ts';
import { codesOf } from '#tests/support/discrepancy-codes.ts';
import { mutationsOf } from '#tests/support/mutate.ts';
import { OUTCOME } from '#tests/support/papers/sample-outcome.ts';

const { outcome } = OUTCOME;
const DAYS = outcome.crewDays ?? [];

const check = (crewDays: readonly CrewDay[], site = OUTCOME.site) =>
  checkOutcome({ ...OUTCOME, site, outcome: { ...outcome, crewDays } });
const codes = (crewDays: readonly CrewDay[]) => check(crewDays).map(({ code }) => code);
const first = (change: (day: CrewDay) => Partial<CrewDay>): readonly CrewDay[] =>
  DAYS.map((day, index) => (index === 0 ? { ...day, ...change(day) } : day));
const higher = <Value extends { readonly nominal: number }>(value: Value): Value => ({
  ...value,
  nominal: value.nominal * 1.001,
});
const lifts = (change: Partial<CrewDay['lifts']>): readonly CrewDay[] =>
  first((day) => ({ lifts: { ...day.lifts, ...change } }));

/** Crew 0 on two days, the second before the first in the working order. */
const turned = [2, 1].flatMap((order, index) =>
  DAYS.slice(0, 1).map((day) => ({ ...day, day: index + 1, work: day.work.slice(order - 1, order) })),
);
const placed = OUTCOME.lines.map((line, index) => ({ ...line, place: { ...line.place, placeOrder: index + 1 } }));

const VIOLATIONS: Readonly<Record<string, readonly CrewDay[]>> = {
  'day-work': DAYS.slice(1),
  'day-number': first(() => ({ day: 2 })),
  'day-beyond': DAYS.flatMap((day) => (day.crew === 0 ? [1, 2, 3].map((number) => ({ ...day, day: number })) : [day])),
  'day-valves': first(() => ({ valves: 5 })),
  'day-time': first(({ time }) => ({ time: seconds(time - 60) })),
  'day-trigger': first(({ trigger }) => ({ trigger: higher(trigger) })),
  'day-vibration': first(({ alone }) => ({ alone: { ...alone, exposure: higher(alone.exposure) } })),
  'day-points': first(({ alone }) => ({ alone: { ...alone, points: alone.points * 0.999 } })),
  'day-noise': first(({ noise }) => ({ noise: higher(noise) })),
  'day-persons': first(() => ({ turns: null })),
  'day-turns': first(({ turns }) => ({ turns: turns && { ...turns, exposure: higher(turns.exposure) } })),
  'day-lifts': lifts({ count: 47 }),
  'day-heaviest': lifts({ number: 'SD-1' }),
  'day-filter': lifts({ filter: { fromGround: kilograms(7), atWaist: kilograms(11.2) } }),
  'day-index': lifts({ equation: { valves: 4, worst: { limit: kilograms(12), index: 0.6 }, refused: [] } }),
  'day-equation': lifts({ equation: { valves: 0, worst: null, refused: [{ why: 'one-handed', valves: 4 }] } }),
  'day-told': first(({ findings }) => ({
    findings: findings.map((finding) => ({ ...finding, id: 'crew-day-vibration-limit' })),
  })),
  'day-steps': first(({ steps }) => ({ steps: steps.slice(1) })),
};

describe('checking the planned days of crews', () => {
  it('finds nothing wrong with the days as planned', () => expect(check(DAYS)).toEqual([]));

  it.each(Object.entries(VIOLATIONS))('says %s', (code, days) => expect(codes(days)).toContain(code));

  it('says day-order where a crew goes back, and nothing of it in order', () => {
    const orders = (crewDays: readonly CrewDay[]) =>
      checkOutcome({ ...OUTCOME, lines: placed, outcome: { ...outcome, crewDays } }).filter(
        ({ code }) => code === 'day-order',
      );
    expect(orders(turned)).toHaveLength(1);
    expect(orders(turned.toReversed())).toEqual([]);
  });

  it('says day-spreadable where two days would keep below a limit that one passes', () => {
    // The sample drive has 2 m/s²; at 30 m/s² four visits of at most 406.4 s are A(8) 7.1, two are 5.04, one is 3.6.
    const SHAKE = 15;
    const models = OUTCOME.models.map((model) =>
      model.role === 'drive'
        ? { ...model, facts: { ...model.facts, vibration: metresPerSecondSquared(model.facts.vibration * SHAKE) } }
        : model,
    );
    const crewDays = DAYS.map((day) => {
      const high = metresPerSecondSquared(day.alone.exposure.high * SHAKE);
      return { ...day, alone: { ...day.alone, exposure: { ...day.alone.exposure, high } } };
    });
    const shaky = (days: number) =>
      checkOutcome({
        ...OUTCOME,
        site: { ...OUTCOME.site, days },
        models,
        outcome: { ...outcome, crewDays },
      }).filter(({ code }) => code === 'day-spreadable');
    expect(shaky(4).map(({ expected }) => expected)).toContain('no day above 5');
    expect(shaky(2).filter(({ sentence }) => sentence.startsWith('Crew 0'))).toEqual([]);
  });

  it('has a violation for every kind of discrepancy that its sources can tell', () => {
    expect([...Object.keys(VIOLATIONS), 'day-order', 'day-spreadable'].toSorted()).toEqual(codesOf('day'));
  });

  it('tells each violation in a sentence with what is right and what was found', () => {
    for (const found of Object.values(VIOLATIONS).flatMap((days) => check(days))) {
      expect(found.sentence).toMatch(/^\S.*[.!?]$/);
      expect(found.sentence).not.toMatch(/undefined|NaN|null/);
      expect(found.expected).not.toBe(found.found);
    }
  });

  it('notices every change of a number, a name or an entry of a day', () => {
    const figures = DAYS.map(({ findings, steps, ...day }) => day);
    const spoken = /\.(unit|basis|source)$/;
    const mutations = mutationsOf(figures).filter(({ at }) => !spoken.test(at));
    const missed = mutations.filter(({ value }) => {
      const days = value.map((day, index) => ({ findings: DAYS[index]?.findings, steps: DAYS[index]?.steps, ...day }));
      return codes(days as readonly CrewDay[]).length === 0;
    });
    console.info(`day mutations: ${mutations.length} made, ${mutations.length - missed.length} noticed`);
    expect(missed.map((one) => `${one.at} ${one.how}`)).toEqual([]);
    expect(mutations.length).toBeGreaterThan(150);
  });
});
