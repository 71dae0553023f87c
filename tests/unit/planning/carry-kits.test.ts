import { describe, expect, it } from 'vitest';
import { NO_CONSTRAINTS } from '#lib/contracts/constraints.ts';
import { parseSite } from '#lib/contracts/site.ts';
import { carryKits } from '#lib/planning/carry-kits.ts';
import { uniqueTags } from '#lib/planning/unique-tags.ts';
import { lackingSentences } from '#lib/services/plans/crew-numbers.ts';
import { seconds } from '#lib/units/quantity.ts';
import { demoEnquiries, demoHouse, demoModels } from '#seeds/load.ts';
import { checkedWorkOut } from '#tests/support/checked.ts';
import { takeList } from '#tests/support/lists/take-list.ts';
import { OUTCOME } from '#tests/support/papers/sample-outcome.ts';

/** The packs that come with its drive last for its four valves, and there is no mains to charge them at. */
const NEEDS_NOTHING_BESIDE = new Set(['contractor']);
const RUNS_A_DRIVE = new Set(['SN-1', 'SP-1']);
const { outcome, site, models, free } = OUTCOME;

const carried = (stock: Readonly<Record<string, number>>) =>
  carryKits({
    kits: outcome.kits.map(({ crew, items, time_s }) => ({
      crew,
      items: items.filter(({ item }) => !RUNS_A_DRIVE.has(item)),
      time: seconds(time_s),
    })),
    work: outcome.work,
    assemblies: outcome.assemblies,
    site,
    models,
    free: stock,
  });

describe('carryKits', () => {
  it('carries what was counted by hand, and tells what a crew goes without', () => {
    expect(carried(free)).toEqual(outcome.kits);
  });

  it('says nothing of lacking where all is free', () => {
    const kits = carried({ ...free, 'SP-1': 5 });
    expect(kits.map(({ lacking }) => lacking)).toEqual([undefined, undefined]);
    expect(kits[1]?.items.find(({ item }) => item === 'SP-1')?.count).toBe(2);
  });

  it('tells in a sentence who goes without what', () => {
    expect(lackingSentences({ outcome: { kits: carried({ ...free, 'SN-1': 0 }) }, models })).toEqual([
      'Crew 1 goes without 1 × SN-1 sample lanyards: no more are free on these dates. Agree before the hire who brings them, or hire on other dates.',
      'Crew 2 goes without 1 × SN-1 sample lanyards: no more are free on these dates. Agree before the hire who brings them, or hire on other dates.',
      'Crew 2 goes without 1 × SP-1 sample spare pack: no more are free on these dates. Agree before the hire who brings them, or hire on other dates.',
    ]);
  });

  it.each(demoEnquiries())(
    'makes a plan of $id that stands, with nothing free of what runs the drives',
    async (demo) => {
      const parsed = parseSite(demo.site, { startsOn: '2030-06-03' });
      if (!parsed.ok) throw new Error(parsed.reason.sentence);
      const all = demoModels();
      const { plans } = await checkedWorkOut({
        lines: uniqueTags((await takeList(demo.listText)).lines),
        site: parsed.value,
        models: all,
        free: Object.fromEntries(all.map(({ number }) => [number, /^S-1|^S-2/.test(number) ? 0 : 3])),
        labour_minor_per_hour: demoHouse().labourMinorPerHour,
        preferences: ['time'],
        constraints: NO_CONSTRAINTS,
        budget: { seconds: 60, nodes: 500 },
      });
      const told = plans.flatMap((plan) => lackingSentences({ outcome: plan, models: all }));
      console.info(`${demo.id}: ${told.length} things lacking`);
      expect(told.length > 0).toBe(!NEEDS_NOTHING_BESIDE.has(demo.id));
    },
    60_000,
  );
});
