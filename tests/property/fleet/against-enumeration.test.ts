import { describe, expect, it } from 'vitest';
import type { Preference } from '#lib/equipment/choices.ts';
import { checkedPlan } from '#tests/support/checked.ts';
import { enumerateBest } from '#tests/support/plans/enumerate-fleet.ts';
import { tinyCase } from '#tests/support/plans/fleet-cases.ts';

const CASES = 520;
const PREFERENCES: readonly Preference[] = ['cost', 'pieces', 'time', 'surest'];
const BUDGET = { seconds: 30, nodes: 20_000 };

describe('plans of small problems', () => {
  it(`are the best of all plans there are, by every preference, on ${CASES} random problems with one to three crews`, async () => {
    let checked = 0;
    let listed = 0;
    const crews = new Map<number, number>();
    for (let seed = 1; seed <= CASES; seed += 1) {
      const problem = tinyCase(seed);
      const { best, leaves } = enumerateBest(problem);
      listed += leaves;
      crews.set(problem.crews, (crews.get(problem.crews) ?? 0) + 1);
      for (const preference of PREFERENCES) {
        const plan = await checkedPlan({ ...problem, preference, budget: BUDGET });
        const where = `seed ${seed}, ${preference}`;
        expect(plan.served, `${where}: valves served`).toBe(best[preference].served);
        expect(plan.objective, `${where}: objective`).toBeCloseTo(best[preference].primary, 5);
        expect(plan.cost_minor, `${where}: cost that settles ties`).toBeCloseTo(best[preference].cost, 3);
        expect(plan.bound, `${where}: bound`).toBeLessThanOrEqual(
          plan.objective + 1e-6 * Math.max(1, Math.abs(plan.objective)),
        );
        expect(plan.proof, where).toBe('proven');
        checked += 1;
      }
    }
    console.info(
      `fleet against enumeration: ${checked} plans of ${CASES} problems checked (crews ${JSON.stringify([...crews])}), ${listed} plans listed`,
    );
    expect(checked).toBe(CASES * PREFERENCES.length);
  }, 600_000);
});
