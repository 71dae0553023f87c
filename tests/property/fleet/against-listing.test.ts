import { expect, it } from 'vitest';
import { seededRandom } from '#lib/kernel/random.ts';
import { checkedPlan } from '#tests/support/checked.ts';
import { plausibleCase, whole } from '#tests/support/plans/fleet-cases.ts';
import { leastListedCost } from '#tests/support/plans/listed-program.ts';

const CASES = 60;

it('plans of middling problems cost what a program of all whole assemblies finds, solved by another search', async () => {
  const seen = { compared: 0, short: 0, columns: 0 };
  for (let seed = 1; seed <= CASES; seed += 1) {
    const random = seededRandom(seed + 40);
    const crews = seed % 3 === 0 ? 2 : 1;
    const problem = plausibleCase({
      seed: seed + 300,
      classes: whole(random, { from: 2, to: crews === 1 ? 4 : 2 }),
      items: whole(random, { from: 10, to: 14 }),
      crews,
      most: 5,
      load: 0.5 + 0.3 * random(),
    });
    const plan = await checkedPlan({ ...problem, preference: 'cost', budget: { seconds: 60, nodes: 20_000 } });
    expect(plan.proof, `seed ${seed}`).toBe('proven');
    const { answer, columns } = await leastListedCost(problem);
    if (plan.served < plan.asked) {
      expect(answer.kind, `seed ${seed}`).toBe('infeasible');
      seen.short += 1;
      continue;
    }
    if (answer.kind !== 'solved') throw new Error(`Seed ${seed}: the listed program is ${answer.kind}.`);
    expect(answer.stop, `seed ${seed}`).toBe('gap reached');
    expect(Math.abs(plan.cost_minor - answer.objective) / answer.objective, `seed ${seed}`).toBeLessThan(2e-6);
    seen.compared += 1;
    seen.columns += columns;
  }
  console.info(`fleet against listing: ${seen.compared} equal, ${seen.short} short by both, ${seen.columns} columns`);
  expect(seen.compared).toBeGreaterThanOrEqual(50);
}, 600_000);
