import { describe, expect, it } from 'vitest';
import { checkPlan } from '#lib/checking/check-plan.ts';
import type { Alternative, ChoiceFamily, FleetItem, FleetPlan, LineClass, Preference } from '#lib/equipment/choices.ts';
import { type Random, seededRandom } from '#lib/kernel/random.ts';
import { toMinor } from '#lib/money/money.ts';
import { kilograms, seconds } from '#lib/units/quantity.ts';
import { checkedPlan } from '#tests/support/checked.ts';
import { type Case, plausibleCase, tinyCase, whole } from '#tests/support/plans/fleet-cases.ts';

const PREFERENCES: readonly Preference[] = ['cost', 'pieces', 'time', 'surest'];

/** What two plans are compared by: their lists of work may differ where two ways are equally good. */
interface Outcome {
  readonly served: number;
  readonly objective: number;
  readonly cost: number;
}

interface Setting {
  readonly problem: Case;
  readonly preference: Preference;
  readonly before: Outcome;
  readonly random: Random;
}

async function outcomeOf(problem: Case, preference: Preference): Promise<Outcome> {
  const plan: FleetPlan = await checkedPlan({ ...problem, preference, budget: { seconds: 60, nodes: 20_000 } });
  expect(plan.proof).toBe('proven');
  expect(checkPlan({ ...problem, plan })).toEqual([]);
  return { served: plan.served, objective: plan.objective, cost: plan.cost_minor };
}

/** Every second case is a small plausible list, the others are tiny and odd. */
function caseOf(seed: number): Case {
  if (seed % 2 === 0) return tinyCase(seed + 7000);
  const random = seededRandom(seed);
  return plausibleCase({
    seed,
    classes: whole(random, { from: 2, to: 5 }),
    items: whole(random, { from: 8, to: 12 }),
    crews: whole(random, { from: 1, to: 2 }),
    most: 4,
    load: 0.6 + random(),
  });
}

/** The plans that every law starts from, made once. */
const starts = new Map<number, Outcome>();

async function startOf(seed: number): Promise<Omit<Setting, 'random'>> {
  const problem = caseOf(seed);
  const preference = PREFERENCES[Math.floor(seed / 2) % PREFERENCES.length] ?? 'cost';
  const before = starts.get(seed) ?? (await outcomeOf(problem, preference));
  starts.set(seed, before);
  return { problem, preference, before };
}

async function lawHolds(request: {
  readonly law: string;
  readonly cases: number;
  /** False where the case does not speak of the law. */
  readonly check: (setting: Setting) => Promise<boolean | undefined>;
}): Promise<void> {
  const { law, cases, check } = request;
  let checked = 0;
  for (let seed = 1; seed <= cases; seed += 1) {
    const start = await startOf(seed);
    if ((await check({ ...start, random: seededRandom(seed + 500) })) !== false) checked += 1;
  }
  console.info(`${law}: ${checked} of ${cases} cases checked`);
  expect(checked, `${law}: no case was really checked`).toBeGreaterThan(0);
}

const tolerance = (value: number) => 1e-5 * Math.max(1, Math.abs(value));

function expectSame(after: Outcome, before: Outcome): void {
  expect(after.served).toBe(before.served);
  expect(Math.abs(after.objective - before.objective)).toBeLessThanOrEqual(tolerance(before.objective));
  expect(Math.abs(after.cost - before.cost)).toBeLessThanOrEqual(tolerance(before.cost));
}

/** More valves, or as many and no worse by the preference, or as good and no dearer. */
function expectNoWorse(after: Outcome, before: Outcome): void {
  expect(after.served).toBeGreaterThanOrEqual(before.served);
  if (after.served > before.served) return;
  expect(after.objective).toBeLessThanOrEqual(before.objective + tolerance(before.objective));
  if (after.objective < before.objective - tolerance(before.objective)) return;
  expect(after.cost).toBeLessThanOrEqual(before.cost + tolerance(before.cost));
}

function shuffled<Value>(list: readonly Value[], random: Random): readonly Value[] {
  return list
    .map((value) => ({ value, key: random() }))
    .sort((a, b) => a.key - b.key)
    .map(({ value }) => value);
}

function mapAlternatives(lineClass: LineClass, change: (one: Alternative) => Alternative): LineClass {
  const families = lineClass.families.map(
    (family): ChoiceFamily => ({
      ...family,
      cores: family.cores.map(change),
      slots: family.slots.map((slot) => slot.map(change)),
    }),
  );
  return { ...lineClass, families };
}

describe('plans', () => {
  it('do not depend on the order of lines, ways and models', async () => {
    await lawHolds({
      law: 'order',
      cases: 40,
      check: async ({ problem, preference, before, random }) => {
        const classes = shuffled(problem.classes, random).map((one) => ({
          ...one,
          families: shuffled(one.families, random).map((family) => ({
            ...family,
            cores: shuffled(family.cores, random),
            slots: shuffled(family.slots, random).map((slot) => shuffled(slot, random)),
          })),
        }));
        const items = shuffled(problem.items, random);
        expectSame(await outcomeOf({ ...problem, classes, items }, preference), before);
        return problem.classes.length > 1;
      },
    });
  });

  it('do not depend on whether equal lines are one class or two', async () => {
    await lawHolds({
      law: 'split classes',
      cases: 40,
      check: async ({ problem, preference, before, random }) => {
        if (problem.classes.every((one) => one.qty < 2)) return false;
        const classes = problem.classes.flatMap((one) => {
          if (one.qty < 2) return [one];
          const first = whole(random, { from: 1, to: one.qty - 1 });
          return [
            { ...one, qty: first },
            { ...one, id: `${one.id} again`, qty: one.qty - first },
          ];
        });
        expectSame(await outcomeOf({ ...problem, classes }, preference), before);
        return true;
      },
    });
  });

  it('cost k times as much when all money is k times as much, and are else the same', async () => {
    await lawHolds({
      law: 'money',
      cases: 40,
      check: async ({ problem, preference, before, random }) => {
        const factor = whole(random, { from: 2, to: 9 });
        const dearer = (one: Alternative): Alternative => ({ ...one, cost_minor: toMinor(one.cost_minor * factor) });
        const after = await outcomeOf(
          {
            ...problem,
            classes: problem.classes.map((one) => mapAlternatives(one, dearer)),
            items: problem.items.map((one) => ({ ...one, cost_minor: toMinor(one.cost_minor * factor) })),
            labour_minor_per_hour: toMinor(problem.labour_minor_per_hour * factor),
          },
          preference,
        );
        const objective = preference === 'cost' ? before.objective * factor : before.objective;
        expectSame(after, { served: before.served, objective, cost: before.cost * factor });
        return before.cost > 0;
      },
    });
  });

  it('do not change when a model comes in that no line can use', async () => {
    await lawHolds({
      law: 'useless model',
      cases: 40,
      check: async ({ problem, preference, before, random }) => {
        const added: FleetItem = {
          id: 'useless',
          cost_minor: toMinor(whole(random, { from: 0, to: 50 })),
          mass: kilograms(1),
          pieces: 1,
          free: whole(random, { from: 0, to: 5 }),
        };
        const at = whole(random, { from: 0, to: problem.items.length });
        const items = [...problem.items.slice(0, at), added, ...problem.items.slice(at)];
        expectSame(await outcomeOf({ ...problem, items }, preference), before);
        return true;
      },
    });
  });

  it('are no worse with a crew more, which may stay at home', async () => {
    await lawHolds({
      law: 'crew more',
      cases: 40,
      check: async ({ problem, preference, before }) => {
        expectNoWorse(await outcomeOf({ ...problem, crews: problem.crews + 1 }, preference), before);
        return true;
      },
    });
  });

  it('are no better without a model', async () => {
    await lawHolds({
      law: 'model less',
      cases: 40,
      check: async ({ problem, preference, before, random }) => {
        const gone = whole(random, { from: 0, to: problem.items.length - 1 });
        const items = problem.items.map((one, index) => (index === gone ? { ...one, free: 0 } : one));
        expectNoWorse(before, await outcomeOf({ ...problem, items }, preference));
        return (problem.items[gone]?.free ?? 0) > 0;
      },
    });
  });

  it('are no worse with more stock', async () => {
    await lawHolds({
      law: 'more stock',
      cases: 40,
      check: async ({ problem, preference, before, random }) => {
        const items = problem.items.map((one) => ({ ...one, free: one.free + whole(random, { from: 0, to: 2 }) }));
        expectNoWorse(await outcomeOf({ ...problem, items }, preference), before);
        return items.some((one, index) => one.free > (problem.items[index]?.free ?? 0));
      },
    });
  });

  it('are no worse with more days at the same money', async () => {
    await lawHolds({
      law: 'more days',
      cases: 40,
      check: async ({ problem, preference, before, random }) => {
        const secondsPerCrew = seconds(problem.secondsPerCrew * (1 + random()));
        expectNoWorse(await outcomeOf({ ...problem, secondsPerCrew }, preference), before);
        return true;
      },
    });
  });

  it('serve no fewer valves, at no less cost, when a line is added', async () => {
    await lawHolds({
      law: 'line more',
      cases: 40,
      check: async ({ problem, preference, before }) => {
        const [first] = problem.classes;
        if (first === undefined) return false;
        const fewer = { ...problem, classes: problem.classes.slice(1) };
        const rest = await outcomeOf(fewer, 'cost');
        const all = preference === 'cost' ? before : await outcomeOf(problem, 'cost');
        expect(before.served, 'the preference decides nothing about how many are served').toBe(all.served);
        expect(all.served).toBeGreaterThanOrEqual(rest.served);
        const isAllServed = all.served === problem.classes.reduce((sum, one) => sum + one.qty, 0);
        if (isAllServed) expect(all.cost).toBeGreaterThanOrEqual(rest.cost - tolerance(rest.cost));
        return isAllServed;
      },
    });
  });
});
