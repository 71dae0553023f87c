/*
 * Adds a finished plan up again from the choices, the stock and the crews it was made of.
 * Invariant: uses nothing of the planner; every sum, limit and bound that the plan states is worked out here a second time.
 * Not here: whether a choice itself is sound (check-assembly.ts) and what pieces cost (check-price.ts).
 * Read next: plan-facts.ts.
 */
import { unreachable } from '#lib/kernel/invariant.ts';
import { atMost, type Discrepancy, holds, same } from './discrepancy.ts';
import { addUp, type PlanFacts, type Sums } from './plan-facts.ts';

/** A plan called proven is within two parts in a million of its bound: one of the solver, one of adding up. */
const PROVEN_GAP = 2e-6;

export function checkPlan(facts: PlanFacts): readonly Discrepancy[] {
  const { sums, discrepancies } = addUp(facts);
  return [
    ...discrepancies,
    ...checkCounts(facts, sums),
    ...checkCrews(facts, sums),
    ...checkKits(facts, sums),
    ...checkStock(facts),
    ...checkCost(facts, sums),
    ...checkBound(facts, sums),
  ];
}

function checkCounts({ classes, plan }: PlanFacts, sums: Sums): readonly Discrepancy[] {
  const asked = classes.reduce((sum, one) => sum + one.qty, 0);
  return [
    ...same({ code: 'plan-asked', what: 'The number of valves asked for', expected: asked, found: plan.asked }),
    ...same({ code: 'plan-served', what: 'The number of valves served', expected: sums.served, found: plan.served }),
    ...classes.flatMap((one) =>
      atMost({
        code: 'plan-class-overserved',
        what: `The number of valves served of class ${one.id}`,
        expected: one.qty,
        found: sums.servedByClass.get(one.id) ?? 0,
      }),
    ),
    ...(plan.servedAtMost === undefined
      ? []
      : holds(plan.servedAtMost >= sums.served - 1e-6 && plan.servedAtMost <= asked + 1e-6, {
          code: 'plan-served-at-most',
          sentence: `At most ${plan.servedAtMost} valves are said to be possible; ${sums.served} are served and ${asked} asked for.`,
          expected: `${sums.served} to ${asked}`,
          found: plan.servedAtMost,
        })),
  ];
}

function checkCrews({ crews, secondsPerCrew, plan }: PlanFacts, sums: Sums): readonly Discrepancy[] {
  const used = [...new Set([...plan.work.map((work) => work.crew), ...plan.kits.map((kit) => kit.crew)])];
  return [
    ...used.flatMap((crew) =>
      holds(Number.isInteger(crew) && crew >= 0 && crew < crews, {
        code: 'plan-crew-unknown',
        sentence: `The plan speaks of crew ${crew}; there are ${crews}, counted from 0.`,
        expected: `0 to ${crews - 1}`,
        found: crew,
      }),
    ),
    ...[...sums.timeByCrew].flatMap(([crew, time]) =>
      atMost({
        code: 'plan-crew-overtime',
        what: `The work of crew ${crew} in seconds`,
        expected: secondsPerCrew,
        found: time,
      }),
    ),
    ...plan.kits.flatMap((kit) =>
      same({
        code: 'plan-crew-time',
        what: `The time of crew ${kit.crew}`,
        expected: sums.timeByCrew.get(kit.crew) ?? 0,
        found: kit.time,
      }),
    ),
    ...holds(new Set(plan.kits.map((kit) => kit.crew)).size === plan.kits.length, {
      code: 'plan-crew-twice',
      sentence: 'A crew has two kits in the plan.',
      expected: 'one kit a crew',
      found: plan.kits.map((kit) => kit.crew).join(', '),
    }),
  ];
}

function checkKits({ plan }: PlanFacts, sums: Sums): readonly Discrepancy[] {
  const crews = new Set([...sums.needByCrew.keys(), ...plan.kits.map((kit) => kit.crew)]);
  return [...crews].flatMap((crew) => {
    const carried = countsOf(plan.kits.filter((kit) => kit.crew === crew).flatMap((kit) => kit.items));
    const needs = sums.needByCrew.get(crew) ?? new Map<string, number>();
    const items = [...new Set([...carried.keys(), ...needs.keys()])];
    return items.flatMap((item) =>
      same({
        code: (carried.get(item) ?? 0) < (needs.get(item) ?? 0) ? 'plan-kit-lacks' : 'plan-kit-surplus',
        what: `What crew ${crew} carries of ${item}`,
        expected: needs.get(item) ?? 0,
        found: carried.get(item) ?? 0,
      }),
    );
  });
}

function checkStock({ items, plan }: PlanFacts): readonly Discrepancy[] {
  const carried = countsOf(plan.kits.flatMap((kit) => kit.items));
  const known = new Map(items.map((item) => [item.id, item.free]));
  return [...carried].flatMap(([item, count]) => {
    const free = known.get(item);
    if (free === undefined) {
      return holds(false, {
        code: 'plan-item-unknown',
        sentence: `The plan carries ${item}, which is no item that was offered.`,
        expected: 'an item of the problem',
        found: item,
      });
    }
    return atMost({
      code: 'plan-stock-exceeded',
      what: `What all crews carry of ${item}`,
      expected: free,
      found: count,
    });
  });
}

function checkCost(facts: PlanFacts, sums: Sums): readonly Discrepancy[] {
  return same({
    code: 'plan-cost',
    what: 'The cost of the plan',
    expected: costOf(facts, sums),
    found: facts.plan.cost_minor,
  });
}

function checkBound(facts: PlanFacts, sums: Sums): readonly Discrepancy[] {
  const { plan } = facts;
  const objective = objectiveOf(facts, sums);
  const gap = (plan.objective - plan.bound) / Math.max(1, Math.abs(plan.objective));
  return [
    ...same({
      code: 'plan-objective',
      what: `The plan’s measure by ${plan.preference}`,
      expected: objective,
      found: plan.objective,
    }),
    ...atMost({ code: 'plan-bound', what: 'The bound', expected: plan.objective, found: plan.bound }),
    ...same({ code: 'plan-gap', what: 'The gap', expected: gap, found: plan.gap }),
    ...holds(!plan.proof.startsWith('proven') || gap <= PROVEN_GAP, {
      code: 'plan-proof',
      sentence: `The plan is called ${plan.proof} with a gap of ${gap}.`,
      expected: `a gap of at most ${PROVEN_GAP}`,
      found: gap,
    }),
    ...(plan.costAtLeast_minor === undefined
      ? []
      : atMost({
          code: 'plan-cost-at-least',
          what: 'The lowest possible cost',
          expected: costOf(facts, sums),
          found: plan.costAtLeast_minor,
        })),
  ];
}

function costOf({ items, labour_minor_per_hour, plan }: PlanFacts, sums: Sums): number {
  const price = new Map(items.map((item) => [item.id, item.cost_minor]));
  const pieces = plan.kits
    .flatMap((kit) => kit.items)
    .reduce((sum, need) => sum + need.count * (price.get(need.item) ?? 0), 0);
  return pieces + sums.perValve_minor + (timeOf(sums) / 3600) * labour_minor_per_hour;
}

function objectiveOf(facts: PlanFacts, sums: Sums): number {
  const { items, plan } = facts;
  switch (plan.preference) {
    case 'cost':
      return costOf(facts, sums);
    case 'time':
      return timeOf(sums);
    case 'surest':
      return sums.secondVisits;
    case 'pieces': {
      const pieces = new Map(items.map((item) => [item.id, item.pieces]));
      return plan.kits
        .flatMap((kit) => kit.items)
        .reduce((sum, need) => sum + need.count * (pieces.get(need.item) ?? 0), 0);
    }
    default:
      return unreachable(plan.preference);
  }
}

function timeOf(sums: Sums): number {
  return [...sums.timeByCrew.values()].reduce((sum, time) => sum + time, 0);
}

function countsOf(needs: readonly { readonly item: string; readonly count: number }[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { item, count } of needs) counts.set(item, (counts.get(item) ?? 0) + count);
  return counts;
}
