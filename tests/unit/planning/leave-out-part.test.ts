import { describe, expect, it } from 'vitest';
import { NO_CONSTRAINTS } from '#lib/contracts/constraints.ts';
import { parseSite } from '#lib/contracts/site.ts';
import { leaveOutPart } from '#lib/planning/leave-out-part.ts';
import { uniqueTags } from '#lib/planning/unique-tags.ts';
import type { WorkOutInput } from '#lib/planning/worked-out.ts';
import { demoEnquiries, demoHouse, demoModels } from '#seeds/load.ts';
import { checkedWorkOut } from '#tests/support/checked.ts';
import { takeList } from '#tests/support/lists/take-list.ts';

/** The demo contractor's four buried valves, with two of every model free. */
async function contractor(): Promise<WorkOutInput> {
  const enquiry = demoEnquiries().find(({ id }) => id === 'contractor');
  if (enquiry === undefined) throw new Error('The demo has no contractor.');
  const site = parseSite(enquiry.site, { startsOn: '2030-06-03' });
  if (!site.ok) throw new Error(site.reason.sentence);
  const models = demoModels();
  return {
    lines: uniqueTags((await takeList(enquiry.listText)).lines),
    site: site.value,
    models,
    free: Object.fromEntries(models.map(({ number }) => [number, 2])),
    labour_minor_per_hour: demoHouse().labourMinorPerHour,
    preferences: ['cost'],
    constraints: NO_CONSTRAINTS,
    budget: { seconds: 60, nodes: 20_000 },
  };
}

describe('leaveOutPart', () => {
  it('tells of every model in a plan the same difference as a plan of a house that has none of it', async () => {
    const input = await contractor();
    const { plans } = await checkedWorkOut(input);
    const plan = plans[0]?.fleet;
    if (plan === undefined) throw new Error('no plan');
    const parts = [...new Set(plan.kits.flatMap((kit) => kit.items.map(({ item }) => item)))];
    expect(parts.length).toBeGreaterThan(4);
    for (const part of parts.slice(0, 4)) {
      const left = await leaveOutPart({ input, preference: 'cost', part });
      const without = await checkedWorkOut({
        ...input,
        models: input.models.map((model) => (model.number === part ? { ...model, madeToOrder: false } : model)),
        free: { ...input.free, [part]: 0 },
      });
      const other = without.plans[0]?.fleet;
      expect(left, part).toMatchObject({
        part,
        is_exact: true,
        valves_lost: plan.served - (other?.served ?? Number.NaN),
      });
      expect(left?.cost_minor).toBeCloseTo(plan.cost_minor, 6);
      expect(left?.extra_cost_minor, part).toBeCloseTo((other?.cost_minor ?? Number.NaN) - plan.cost_minor, 4);
      if (left?.valves_lost === 0) expect(left.extra_cost_minor).toBeGreaterThanOrEqual(-1e-6);
      expect(left?.used_for.length, part).toBeGreaterThan(0);
      expect(left?.instead.some(({ item }) => item === part)).toBe(false);
    }
  }, 60_000);

  it('answers nothing of a model that the plan does not carry', async () => {
    const input = await contractor();
    expect(await leaveOutPart({ input, preference: 'cost', part: 'unheard-of' })).toBeUndefined();
  });
});
