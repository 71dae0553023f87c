import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Model } from '#lib/equipment/model.ts';
import { seededRandom } from '#lib/kernel/random.ts';
import { explainPart } from '#lib/kits/why/explain-part.ts';
import { ranged } from '#lib/rules/sample-facts.ts';
import { metres } from '#lib/units/quantity.ts';
import { type Enumerated, enumerateKits } from '#tests/support/kits/enumerate-kits.ts';
import { type KitCase, randomKitCase } from '#tests/support/kits/kit-cases.ts';

/** Whether one, two or three links take every case, none of them needless, one of them behind the adapter. */
function isHeld(number: string, { links, cases }: Enumerated): boolean {
  const bits = links.map(({ link, takes }) => ({
    number: link.adapter.number,
    takes: takes.reduce((sum, one) => sum | (1n << BigInt(cases.indexOf(one))), 0n),
  }));
  const all = (1n << BigInt(cases.length)) - 1n;
  const fills = (set: readonly (typeof bits)[number][]): boolean =>
    set.reduce((sum, { takes }) => sum | takes, 0n) === all;
  const sets = bits.flatMap((a, i) => [
    [a],
    ...bits.slice(i + 1).flatMap((b, j) => [[a, b], ...bits.slice(i + j + 2).map((c) => [a, b, c])]),
  ]);
  return sets.some(
    (set) =>
      set.some((one) => one.number === number) &&
      fills(set) &&
      set.every((left) => !fills(set.filter((one) => one !== left))),
  );
}

/** The same house with wheel adapters of narrow bands, and a wheel that is only known within a range. */
function withNarrowBands(seed: number): KitCase {
  const random = seededRandom(seed);
  const kitCase = randomKitCase(seed);
  const { line, duty } = kitCase.lineDuty;
  const low = 0.3 + 0.1 * random();
  const wheelDiameter = ranged('m', low, low + 0.05 + 0.25 * random());
  const models = kitCase.models.map((model): Model => {
    if (model.role !== 'adapter' || model.facts.wheel === undefined) return model;
    const start = 0.2 + 0.3 * random();
    const diameter = { low: metres(start), high: metres(start + 0.1 + 0.25 * random()) };
    return { ...model, facts: { ...model.facts, wheel: { ...model.facts.wheel, diameter } } };
  });
  const grip = duty.grip.kind === 'wheel' ? { ...duty.grip, wheelDiameter } : duty.grip;
  return { ...kitCase, models, lineDuty: { line, duty: { ...duty, grip } } };
}

it('an adapter fits exactly when some covering set of some assembly holds it, alone or with others', () => {
  const seen = { alone: 0, inSet: 0, refused: 0 };
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 2 ** 30 }), (seed) => {
      const kitCase = withNarrowBands(seed);
      const all = enumerateKits(kitCase, { made: 'made to order too' });
      for (const { number, role } of kitCase.models) {
        if (role !== 'adapter') continue;
        const answer = explainPart({ ...kitCase, part: number });
        expect(answer.fits, `seed ${seed}, ${number}`).toBe(all.some((one) => isHeld(number, one)));
        if (!answer.fits) seen.refused += 1;
        else if (answer.because[0]?.id === 'part-serves-in-set') seen.inSet += 1;
        else seen.alone += 1;
      }
    }),
    { seed: 41, numRuns: 1200 },
  );
  console.info(
    `adapters: ${seen.alone} fit alone, ${seen.inSet} in a set, ${seen.refused} do not, as enumeration says`,
  );
  expect(Math.min(seen.alone, seen.inSet, seen.refused)).toBeGreaterThan(20);
});
