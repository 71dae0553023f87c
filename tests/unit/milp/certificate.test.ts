import { describe, expect, it } from 'vitest';
import { seededRandom } from '#lib/kernel/random.ts';
import { certify, provesEmpty } from '#lib/milp/certificate.ts';
import { type SparseModel, startModel } from '#lib/milp/sparse-model.ts';
import { enumerateProgram, randomProgram } from '#tests/support/plans/random-program.ts';

const CASES = 300;

function boundsOf(model: SparseModel) {
  return { lower: model.columnLower, upper: model.columnUpper };
}

describe('certify', () => {
  it('gives the optimum for the multipliers of a linear program reckoned by hand', () => {
    // Minimise 3x + 2y over x + y ≥ 2, x − y ≥ −1: at (0.5, 1.5) with multipliers 2.5 and 0.5 the bound is 4.5.
    const model = startModel();
    model.column({ cost: 3, lower: 0, upper: 10, integer: false });
    model.column({ cost: 2, lower: 0, upper: 10, integer: false });
    const both = (a: number, b: number) => [[0, a] as const, [1, b] as const];
    model.row({ lower: 2, upper: Number.POSITIVE_INFINITY, entries: both(1, 1) });
    model.row({ lower: -1, upper: Number.POSITIVE_INFINITY, entries: both(1, -1) });
    const built = model.build();
    const proof = certify({ model: built, multipliers: [2.5, 0.5], bounds: boundsOf(built), costFactor: 1 });
    expect(proof.bound).toBeCloseTo(4.5, 9);
    expect([...proof.reducedCost]).toEqual([0, 0]);
    const weak = certify({ model: built, multipliers: [1, 0], bounds: boundsOf(built), costFactor: 1 });
    expect(weak.bound).toBeCloseTo(2, 9);
    expect([...weak.reducedCost]).toEqual([2, 1]);
  });

  it(`never bounds above the best point, whatever the multipliers, on ${CASES} random programs`, () => {
    let checked = 0;
    for (let seed = 1; seed <= CASES; seed += 1) {
      const model = randomProgram(seed);
      const { objective } = enumerateProgram(model);
      if (!Number.isFinite(objective)) continue;
      const random = seededRandom(seed);
      for (let round = 0; round < 20; round += 1) {
        const multipliers = Array.from({ length: model.rows }, () => (random() - 0.5) * 8);
        const { bound } = certify({ model, multipliers, bounds: boundsOf(model), costFactor: 1 });
        expect(bound, `seed ${seed}`).toBeLessThanOrEqual(objective);
        checked += 1;
      }
    }
    console.info(`certificate: ${checked} sets of multipliers checked`);
    expect(checked).toBeGreaterThan(CASES * 10);
  });

  it('says nothing where a column without an end would have to pay', () => {
    const model = startModel();
    model.column({ cost: -1, lower: 0, upper: Number.POSITIVE_INFINITY, integer: false });
    const built = model.build();
    const { bound } = certify({ model: built, multipliers: [], bounds: boundsOf(built), costFactor: 1 });
    expect(bound).toBe(Number.NEGATIVE_INFINITY);
  });

  it('passes over multipliers that are no numbers or speak of a side that has no end', () => {
    const model = randomProgram(3);
    const bounds = boundsOf(model);
    const plain = certify({ model, multipliers: new Float64Array(model.rows), bounds, costFactor: 1 });
    const odd = certify({
      model,
      multipliers: Array.from({ length: model.rows }, () => Number.NaN),
      bounds,
      costFactor: 1,
    });
    expect(odd).toEqual(plain);
  });
});

describe('provesEmpty', () => {
  it('takes a ray that proves emptiness with either sign, and nothing less', () => {
    const model = startModel();
    model.column({ cost: 0, lower: 0, upper: 1, integer: false });
    model.row({ lower: 2, upper: Number.POSITIVE_INFINITY, entries: [[0, 1]] });
    const built = model.build();
    const bounds = boundsOf(built);
    expect(provesEmpty({ model: built, multipliers: [1], bounds })).toBe(true);
    expect(provesEmpty({ model: built, multipliers: [-3], bounds })).toBe(true);
    expect(provesEmpty({ model: built, multipliers: [0], bounds })).toBe(false);
  });

  it(`never proves a program empty that has a point, on ${CASES} random programs`, () => {
    let checked = 0;
    for (let seed = 1; seed <= CASES; seed += 1) {
      const model = randomProgram(seed);
      if (!Number.isFinite(enumerateProgram(model).objective)) continue;
      const random = seededRandom(seed + 9000);
      for (let round = 0; round < 20; round += 1) {
        const multipliers = Array.from({ length: model.rows }, () => (random() - 0.5) * 8);
        expect(provesEmpty({ model, multipliers, bounds: boundsOf(model) }), `seed ${seed}`).toBe(false);
        checked += 1;
      }
    }
    console.info(`emptiness: ${checked} sets of multipliers checked`);
    expect(checked).toBeGreaterThan(CASES * 10);
  });
});
