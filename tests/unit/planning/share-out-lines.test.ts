import { describe, expect, it } from 'vitest';
import { NO_CONSTRAINTS } from '#lib/contracts/constraints.ts';
import { parseSite } from '#lib/contracts/site.ts';
import { uniqueTags } from '#lib/planning/unique-tags.ts';
import { demoEnquiries, demoHouse, demoModels } from '#seeds/load.ts';
import { checkedWorkOut, tally } from '#tests/support/checked.ts';
import { takeList } from '#tests/support/lists/take-list.ts';

describe('shareOutLines', () => {
  it('gives the lines of a class what the crews do, each line at most what it asked for', async () => {
    const demo = demoEnquiries().find(({ id }) => id === 'contractor');
    const parsed = parseSite(demo?.site, { startsOn: '2030-06-03' });
    if (demo === undefined || !parsed.ok) throw new Error('The demo has no contractor.');
    const once = (await takeList(demo.listText)).lines;
    const models = demoModels();
    const before = tally.assemblies;
    const { plans, classes } = await checkedWorkOut({
      lines: uniqueTags([...once, ...once, ...once]).map((line, index) => ({ ...line, qty: 1 + (index % 7) })),
      site: { ...parsed.value, crews: 2, days: 1 },
      models,
      free: Object.fromEntries(models.map(({ number }) => [number, 2])),
      labour_minor_per_hour: demoHouse().labourMinorPerHour,
      preferences: ['cost', 'time'],
      constraints: NO_CONSTRAINTS,
      budget: { seconds: 60, nodes: 500 },
    });
    expect(classes.map(({ tags }) => tags.length)).toEqual([3, 3, 3, 3]);
    for (const { lines, fleet } of plans) {
      expect(lines).toHaveLength(12);
      expect(fleet.served).toBeLessThan(fleet.asked);
      expect(lines.reduce((sum, { served }) => sum + served, 0)).toBe(fleet.served);
      expect(new Set(lines.flatMap(({ parts }) => parts.map(({ crew }) => crew))).size).toBe(2);
    }
    console.info(`lines of classes: ${tally.assemblies - before} assemblies checked on the lines they serve`);
    expect(tally.assemblies - before).toBeGreaterThan(12);
  }, 60_000);
});
