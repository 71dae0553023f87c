import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CaseFigures } from '#lib/planning/try-cases.ts';
import { frontierOf } from '#lib/services/plans/frontier-view.ts';

function figures(one: { readonly days: number; readonly cost: number; readonly served: number }): CaseFigures {
  return {
    key: `${one.days} ${one.cost} ${one.served}`,
    change: { days: one.days, crews: 1 },
    served: one.served,
    asked: 5,
    cost_minor: one.cost,
    hours: 1,
    mass_kg: 1,
    pieces: 1,
    gap: 0,
    proof: 'proven',
    short: [],
    shortCount: 0,
    discrepancies: [],
  };
}

describe('the frontier', () => {
  it('marks a plan that nothing beats, and leaves one unmarked that costs more for as many days and valves', () => {
    const marked = frontierOf([
      figures({ days: 1, cost: 300, served: 5 }),
      figures({ days: 2, cost: 200, served: 5 }),
      figures({ days: 3, cost: 250, served: 5 }),
      figures({ days: 1, cost: 100, served: 3 }),
    ]);
    expect(marked.filter(({ isBest }) => isBest).map(({ key }) => key)).toEqual(['1 300 5', '1 100 3', '2 200 5']);
  });

  it('leaves no plan unmarked that a marked one does not beat or equal', () => {
    let unmarked = 0;
    const plan = fc.record({
      days: fc.integer({ min: 1, max: 5 }),
      cost: fc.integer({ min: 1, max: 9 }),
      served: fc.integer({ min: 0, max: 5 }),
    });
    fc.assert(
      fc.property(fc.array(plan, { minLength: 1, maxLength: 12 }), (plans) => {
        const points = frontierOf(plans.map(figures));
        const best = points.filter(({ isBest }) => isBest);
        expect(best.length).toBeGreaterThan(0);
        for (const point of points.filter(({ isBest }) => !isBest)) {
          unmarked += 1;
          const better = best.some(
            (one) => one.days <= point.days && one.cost_minor <= point.cost_minor && one.served >= point.served,
          );
          expect(better).toBe(true);
        }
      }),
      { seed: 41, numRuns: 200 },
    );
    expect(unmarked).toBeGreaterThan(200);
  });
});
