import { expect, it } from 'vitest';
import { seededRandom } from '#lib/kernel/random.ts';
import { checkedChoices, checkedPlan } from '#tests/support/checked.ts';
import { plausibleCatalogue } from '#tests/support/kits/plausible-catalogue.ts';
import { PLAUSIBLE_SITE } from '#tests/support/lists/plausible-schedule.ts';
import { NO_WISHES, plausibleLines, plausibleProblem } from '#tests/support/plans/table-cases.ts';

const CASES = 40;

it('a locked part never serves more valves, and never the same number for less', async () => {
  const seen = { dearer: 0, equal: 0, fewer: 0 };
  const { models } = plausibleCatalogue({ seed: 60, models: 60 });
  for (let seed = 1; seed <= CASES; seed += 1) {
    const lines = plausibleLines({ seed, lines: 5 });
    const ask = { lines, site: PLAUSIBLE_SITE, models };
    const free = checkedChoices({ ...ask, constraints: NO_WISHES });
    const random = seededRandom(seed + 900);
    // A part that some line may have: any other is passed over.
    const able = [
      ...new Set(
        free.classes.flatMap(({ families }) =>
          families.flatMap(({ cores, slots }) =>
            [cores, ...slots].flat().flatMap(({ needs }) => needs.map(({ item }) => item)),
          ),
        ),
      ),
    ];
    const locked = able[Math.floor(random() * able.length)];
    if (locked === undefined) continue;
    const held = checkedChoices({ ...ask, constraints: { ...NO_WISHES, lockedParts: [locked] } });
    const row = { models: 60, lines: 5, crews: 1, seed, budget: { seconds: 60, nodes: 20_000 } };
    const problem = plausibleProblem(row, free.classes);
    const before = await checkedPlan({ ...problem, preference: 'cost' });
    const after = await checkedPlan({ ...problem, classes: held.classes, preference: 'cost' });
    expect([before.proof, after.proof], `seed ${seed}`).toEqual(['proven', 'proven']);
    expect(after.served, `seed ${seed}, ${locked}`).toBeLessThanOrEqual(before.served);
    if (after.served < before.served) seen.fewer += 1;
    else {
      expect(after.cost_minor, `seed ${seed}, ${locked}`).toBeGreaterThanOrEqual(before.cost_minor - 1e-3);
      if (after.cost_minor > before.cost_minor + 1e-3) seen.dearer += 1;
      else seen.equal += 1;
    }
  }
  console.info(`locks: ${seen.dearer} dearer, ${seen.equal} equal, ${seen.fewer} serve fewer`);
  expect(seen.dearer).toBeGreaterThan(8);
  expect(seen.dearer + seen.equal + seen.fewer).toBeGreaterThan(25);
});
