/*
 * Looks up what a plan refers to and adds up, for each crew, what its work asks for.
 * Invariant: a reference to something that is not there is a discrepancy and adds nothing.
 * Not here: comparing the sums with the plan's own (check-plan.ts).
 * Read next: check-plan.ts.
 */
import type { Alternative, FleetItem, FleetPlan, LineClass, Served } from '#lib/equipment/choices.ts';
import { type Discrepancy, told } from './discrepancy.ts';

export interface PlanFacts {
  readonly classes: readonly LineClass[];
  readonly items: readonly FleetItem[];
  readonly crews: number;
  readonly secondsPerCrew: number;
  readonly labour_minor_per_hour: number;
  readonly plan: FleetPlan;
}

export interface Sums {
  readonly served: number;
  readonly servedByClass: ReadonlyMap<string, number>;
  readonly timeByCrew: ReadonlyMap<number, number>;
  /** The most of each item that one valve of the crew's work needs. */
  readonly needByCrew: ReadonlyMap<number, ReadonlyMap<string, number>>;
  /** Spent per valve, over all valves. */
  readonly perValve_minor: number;
  readonly secondVisits: number;
}

export function addUp(facts: PlanFacts): { readonly sums: Sums; readonly discrepancies: readonly Discrepancy[] } {
  const discrepancies: Discrepancy[] = [];
  const servedByClass = new Map<string, number>();
  const timeByCrew = new Map<number, number>();
  const needByCrew = new Map<number, Map<string, number>>();
  let [served, perValve, secondVisits] = [0, 0, 0];
  for (const work of facts.plan.work) {
    const lineClass = facts.classes.find((one) => one.id === work.classId);
    const parts = lineClass === undefined ? null : partsOf(lineClass, work);
    if (lineClass === undefined || parts === null || !(Number.isInteger(work.qty) && work.qty > 0)) {
      discrepancies.push(unfounded(work));
      continue;
    }
    const sumOf = (value: (part: Alternative) => number) => parts.reduce((sum, part) => sum + value(part), 0);
    served += work.qty;
    servedByClass.set(work.classId, (servedByClass.get(work.classId) ?? 0) + work.qty);
    const time = work.qty * (lineClass.moveTime + sumOf((part) => part.timePerValve));
    timeByCrew.set(work.crew, (timeByCrew.get(work.crew) ?? 0) + time);
    perValve += work.qty * sumOf((part) => part.cost_minor);
    secondVisits += work.qty * (1 - parts.reduce((chance, part) => chance * part.chance, 1));
    const needs = needByCrew.get(work.crew) ?? new Map<string, number>();
    for (const [item, count] of together(parts)) needs.set(item, Math.max(needs.get(item) ?? 0, count));
    needByCrew.set(work.crew, needs);
  }
  return {
    sums: { served, servedByClass, timeByCrew, needByCrew, perValve_minor: perValve, secondVisits },
    discrepancies,
  };
}

/** Core and slots of the family that is named, or null where one of them is not in it. */
function partsOf(lineClass: LineClass, work: Served): readonly Alternative[] | null {
  const family = lineClass.families.find((one) => one.id === work.family);
  const core = family?.cores.find((one) => one.id === work.core);
  if (family === undefined || core === undefined || work.slots.length !== family.slots.length) return null;
  const parts = [core];
  for (const [index, slot] of family.slots.entries()) {
    const chosen = slot.find((one) => one.id === work.slots[index]);
    if (chosen === undefined) return null;
    parts.push(chosen);
  }
  return parts;
}

/** One assembly uses its core and one alternative of each slot at once, so what they need adds up. */
function together(parts: readonly Alternative[]): ReadonlyMap<string, number> {
  const needs = new Map<string, number>();
  for (const { item, count } of parts.flatMap((part) => part.needs)) needs.set(item, (needs.get(item) ?? 0) + count);
  return needs;
}

function unfounded(work: Served): Discrepancy {
  return told({
    code: 'plan-work-unfounded',
    sentence: `The plan has ${work.qty} valves of class ${work.classId} done by ${work.family}: ${[work.core, ...work.slots].join(' + ')}, which is no choice of that class.`,
    expected: 'a whole number of valves done by a core and one alternative of every slot of one family',
    found: [work.family, work.core, ...work.slots].join(' + '),
  });
}
