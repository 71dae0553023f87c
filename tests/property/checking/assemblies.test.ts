import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseSite } from '#lib/contracts/site.ts';
import { assessDuties } from '#lib/duty/assess-duties.ts';
import type { DirectionDuty } from '#lib/duty/duty.ts';
import { ranged, said, stated } from '#lib/rules/sample-facts.ts';
import { newtonMetres, perMinute } from '#lib/units/quantity.ts';
import { demoEnquiries, demoModels } from '#seeds/load.ts';
import { checkedChoices, tally } from '#tests/support/checked.ts';
import { type KitCase, randomKitCase } from '#tests/support/kits/kit-cases.ts';
import { takeList } from '#tests/support/lists/take-list.ts';

const NONE = { lockedParts: [], excludedParts: [], pins: [] } as const;

/** What random houses leave alike: unequal directions, strokes, age, heat, height, thin air, guesses, curves, reversing heads. */
const HARSHER = fc.record({
  seed: fc.integer({ min: 1, max: 2 ** 30 }),
  strokes: fc.constantFrom(1, 2, 3, 7),
  closing: fc.double({ min: 0.4, max: 1.6, noNaN: true }),
  turns: fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 80 })),
  lastOperated: fc.option(fc.constantFrom(1, 5, 6, 30, 1999, 2024, 2029)),
  air: fc.constantFrom(3e5, 5e5, 7e5),
  weather: fc.tuple(fc.integer({ min: -10, max: 25 }), fc.integer({ min: 0, max: 18 })),
  altitude: fc.option(fc.integer({ min: 0, max: 2900 })),
  closes: fc.constantFrom('clockwise' as const, 'anticlockwise' as const, 'unknown' as const),
  basis: fc.constantFrom('stated' as const, 'assumed' as const),
  curve: fc.boolean(),
  reverses: fc.boolean(),
  faces: fc.constantFrom('up' as const, 'side' as const),
});
type Harsher = typeof HARSHER extends fc.Arbitrary<infer Value> ? Value : never;

function harsher(one: Harsher): KitCase {
  const { lineDuty, site, models } = randomKitCase(one.seed);
  const { line, duty } = lineDuty;
  const [least, more] = one.turns;
  const way = (of: DirectionDuty, factor: number): DirectionDuty => ({
    ...of,
    starting: ranged('N·m', of.starting.low * factor, of.starting.high * factor),
    running: ranged('N·m', of.running.low * factor * 0.7, of.running.high * factor),
    neverExceed: { ...of.neverExceed, torque: { ...of.neverExceed.torque, basis: one.basis } },
  });
  const [cold, warmer] = one.weather;
  return {
    lineDuty: {
      line: {
        ...line,
        state: one.lastOperated === null ? {} : { lastOperated: said(one.lastOperated) },
        place: { ...line.place, faces: said(one.faces) },
      },
      duty: {
        ...duty,
        strokes: one.strokes,
        opening: way(duty.opening, 1),
        closing: way(duty.closing, one.closing),
        turns: ranged('turn', least, least + more),
        closes: one.closes,
      },
    },
    site: {
      ...site,
      airPressure: stated('Pa', one.air),
      temperature: ranged('°C', cold, cold + warmer),
      ...(one.altitude === null ? {} : { altitude: stated('m', one.altitude) }),
    },
    models: models.map((model) => {
      if (model.role === 'head') return { ...model, facts: { ...model.facts, reverses: one.reverses } };
      if (model.role !== 'drive' || !one.curve) return model;
      const gears = model.facts.gears.map((gear) => ({
        ...gear,
        curve: [0.3, 0.6, 0.9].map((share) => ({
          torque: newtonMetres(gear.stallTorque * share),
          speed: perMinute(gear.freeSpeed * (1 - share ** 2)),
        })),
      }));
      return { ...model, facts: { ...model.facts, gears } };
    }),
  };
}

describe('assemblies', () => {
  it('stand up to the independent check on random lines in hard places', () => {
    const before = tally.assemblies;
    let served = 0;
    fc.assert(
      fc.property(HARSHER, (one) => {
        const { lineDuty, site, models } = harsher(one);
        served += checkedChoices({ lines: [lineDuty], site, models, constraints: NONE }).classes.length;
      }),
      { seed: 51, numRuns: 1500 },
    );
    console.info(`hard places: ${served} lines served, ${tally.assemblies - before} assemblies checked`);
    expect(served).toBeGreaterThan(100);
  });

  it.each(demoEnquiries())(
    'stand up to the independent check on the demo list of $id',
    async ({ id, site, listText }) => {
      const before = tally.assemblies;
      const parsed = parseSite(site, { startsOn: '2026-03-09' });
      if (!parsed.ok) throw new Error(parsed.reason.sentence);
      const lines = (await takeList(listText)).lines.map(({ line }) => line);
      const duties = assessDuties({ lines, site: parsed.value });
      const lineDuties = lines.flatMap((line, index) => {
        const duty = duties[index];
        return duty === undefined ? [] : [{ line, duty }];
      });
      const choices = checkedChoices({
        lines: lineDuties,
        site: parsed.value,
        models: demoModels(),
        constraints: NONE,
      });
      console.info(`${id}: ${tally.assemblies - before} assemblies of ${choices.classes.length} classes checked`);
      expect(tally.assemblies - before).toBeGreaterThanOrEqual(choices.classes.length);
      expect(choices.classes.length).toBeGreaterThan(0);
    },
  );
});
