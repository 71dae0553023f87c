import { describe, expect, it } from 'vitest';
import type { PlanOutcome } from '#lib/planning/worked-out.ts';
import { coverageOf } from '#lib/services/plans/coverage-view.ts';
import { prepareInput } from '#lib/services/plans/plan-enquiry.ts';
import { checkedWorkOut } from '#tests/support/checked.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

async function planOf(enquiryId: number): Promise<PlanOutcome> {
  const { input } = granted(prepareInput(await demoHouseContext(), enquiryId));
  const [plan] = (await checkedWorkOut({ ...input, preferences: ['cost'] })).plans;
  if (plan === undefined) throw new Error('There is no plan.');
  return plan;
}

describe('what each piece is needed for', () => {
  it('counts every valve of every line once in the bands, and each row by the assemblies that hold the piece', async () => {
    const plan = await planOf(7);
    const coverage = coverageOf(plan);
    const served = plan.lines.reduce((sum, line) => sum + line.served, 0);
    expect(coverage.valves).toBe(served);
    expect(coverage.bands.reduce((sum, { valves }) => sum + valves, 0)).toBe(served);
    for (const row of coverage.rows) {
      const counted = row.shares.reduce((sum, share, band) => sum + share * (coverage.bands[band]?.valves ?? 0), 0);
      expect(counted).toBeCloseTo(row.valves, 9);
    }
    expect(coverage.rows.length).toBeGreaterThan(4);
  });

  it('draws thousands of lines together into bands that a phone can show, and loses no valve', async () => {
    const plan = await planOf(7);
    const [line] = plan.lines;
    if (line === undefined) throw new Error('There is no line.');
    const lines = Array.from({ length: 5000 }, (_, index) => ({
      ...line,
      tag: `V-${index}`,
      classId: `c${index % 700}`,
    }));
    const coverage = coverageOf({ ...plan, lines });
    expect(coverage.bands.length).toBeLessThanOrEqual(48);
    expect(coverage.valves).toBe(5000 * line.served);
    expect(coverage.rows.every(({ tags }) => tags.length <= 12)).toBe(true);
  });
});
