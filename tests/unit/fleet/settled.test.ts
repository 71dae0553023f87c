import { describe, expect, it } from 'vitest';
import { prepare } from '#lib/fleet/prepare.ts';
import { type Aim, pick } from '#lib/fleet/program.ts';
import { leastOfUses, overSettled, roomOf } from '#lib/fleet/settled.ts';
import { checkedPlan } from '#tests/support/checked.ts';
import { tinyCase } from '#tests/support/plans/fleet-cases.ts';
import { smallFleet } from '#tests/support/plans/small-fleet.ts';

/** Least seconds: all 24 valves with the swift drive, 24 · 200 = 4800; light takes 100 more, heavy 200 more a valve. */
function ruledOut(settled: { readonly aim: Aim; readonly most: number }): readonly string[] {
  const { program } = prepare(smallFleet({ preference: settled.aim === 'second visits' ? 'surest' : 'cost' }));
  const rooms = [roomOf({ program, unserved: 0, settled })];
  return program.jobs.flatMap((job) =>
    job.branches.flatMap((branch) => {
      const isOver = overSettled({ program, settled: [settled], rooms, job, branch });
      return pick(branch.roles, 0)
        .filter(isOver)
        .map((option) => `${job.id}: ${option.id}`);
    }),
  );
}

describe('overSettled', () => {
  it('rules out what one valve alone would overdo, and nothing that may still fit', () => {
    expect(ruledOut({ aim: 'time', most: 4800 })).toEqual(['easy: light', 'easy: heavy', 'hard: heavy']);
    expect(ruledOut({ aim: 'time', most: 4900 })).toEqual(['easy: heavy', 'hard: heavy']);
    expect(ruledOut({ aim: 'time', most: 5000 })).toEqual([]);
  });

  it('rules out unsure ways when no second visit is left', () => {
    expect(ruledOut({ aim: 'second visits', most: 0 })).toEqual(['easy: light', 'easy: heavy', 'hard: heavy']);
    expect(ruledOut({ aim: 'second visits', most: 0.3 })).toEqual(['hard: heavy']);
  });

  it('rules nothing out by pieces, which valves share', () => {
    expect(ruledOut({ aim: 'pieces', most: 1 })).toEqual([]);
  });
});

describe('what valves take at the least', () => {
  it('is a bound below every plan by every preference, and seldom nothing', async () => {
    const seen = { compared: 0, positive: 0 };
    for (let seed = 1; seed <= 15; seed += 1) {
      const problem = { ...tinyCase(seed), budget: { seconds: 30, nodes: 2000 } };
      for (const [preference, aim] of [
        ['cost', 'cost'],
        ['pieces', 'pieces'],
        ['time', 'time'],
        ['surest', 'second visits'],
      ] as const) {
        const plan = await checkedPlan({ ...problem, preference });
        const { program } = prepare({ ...problem, preference });
        const possible = program.jobs.reduce((sum, job) => sum + job.qty, 0);
        const least = leastOfUses({ program, aim, unserved: possible - plan.served });
        expect(least, `seed ${seed}, ${preference}`).toBeLessThanOrEqual(plan.objective + 1e-6);
        seen.compared += 1;
        if (least > 0) seen.positive += 1;
      }
    }
    console.info(`least of uses: ${JSON.stringify(seen)}`);
    expect(seen.positive).toBeGreaterThan(20);
  }, 60_000);
});
