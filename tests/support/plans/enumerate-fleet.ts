/*
 * The best plan of a tiny fleet problem by listing every way of doing every valve; shares nothing with the planner.
 */
import type { LineClass, Preference } from '#lib/equipment/choices.ts';
import type { Case } from './fleet-cases.ts';

export interface Best {
  readonly served: number;
  readonly primary: number;
  readonly cost: number;
}

interface Way {
  readonly needs: ReadonlyMap<string, number>;
  readonly time: number;
  readonly cost: number;
  readonly chance: number;
}

function waysOf(lineClass: LineClass): readonly Way[] {
  return lineClass.families.flatMap((family) => {
    let partial: Way[] = [{ needs: new Map(), time: lineClass.moveTime, cost: 0, chance: 1 }];
    for (const role of [family.cores, ...family.slots]) {
      partial = partial.flatMap((way) =>
        role.map((one) => {
          const needs = new Map(way.needs);
          for (const need of one.needs) needs.set(need.item, (needs.get(need.item) ?? 0) + need.count);
          return {
            needs,
            time: way.time + one.timePerValve,
            cost: way.cost + one.cost_minor,
            chance: way.chance * one.chance,
          };
        }),
      );
    }
    return partial;
  });
}

export function enumerateBest(problem: Case): { readonly best: Record<Preference, Best>; readonly leaves: number } {
  const none: Best = { served: -1, primary: Number.POSITIVE_INFINITY, cost: Number.POSITIVE_INFINITY };
  const best: Record<Preference, Best> = { cost: none, pieces: none, time: none, surest: none };
  const ways = problem.classes.map(waysOf);
  const valves = problem.classes.flatMap((lineClass, index) => Array.from({ length: lineClass.qty }, () => index));
  const kits = Array.from({ length: problem.crews }, () => new Map<string, number>());
  const times = Array.from({ length: problem.crews }, () => 0);
  let leaves = 0;

  const settle = (state: { served: number; useCost: number; second: number }): void => {
    leaves += 1;
    let kitCost = 0;
    let pieces = 0;
    for (const item of problem.items) {
      const carried = kits.reduce((sum, kit) => sum + (kit.get(item.id) ?? 0), 0);
      if (carried > item.free) return;
      kitCost += carried * item.cost_minor;
      pieces += carried * item.pieces;
    }
    const time = times.reduce((sum, one) => sum + one, 0);
    const cost = kitCost + state.useCost + (time * problem.labour_minor_per_hour) / 3600;
    const primaries: Record<Preference, number> = { cost, pieces, time, surest: state.second };
    for (const preference of ['cost', 'pieces', 'time', 'surest'] as const) {
      const primary = primaries[preference];
      const known = best[preference];
      const isBetter =
        state.served > known.served ||
        (state.served === known.served &&
          (primary < known.primary - 1e-9 || (primary < known.primary + 1e-9 && cost < known.cost - 1e-9)));
      if (isBetter) best[preference] = { served: state.served, primary, cost };
    }
  };

  /** `from` keeps valves of one class in ascending order of choice, so that no plan is listed twice. */
  const place = (valve: number, from: number, state: { served: number; useCost: number; second: number }): void => {
    const lineClass = valves[valve];
    if (lineClass === undefined) {
      settle(state);
      return;
    }
    const list = ways[lineClass] ?? [];
    const next = (choice: number) => (valves[valve + 1] === lineClass ? choice : 0);
    const choices = list.length * problem.crews;
    for (let choice = from; choice < choices; choice += 1) {
      const crew = Math.floor(choice / list.length);
      const way = list[choice % list.length];
      const kit = kits[crew];
      const time = times[crew];
      if (way === undefined || kit === undefined || time === undefined) continue;
      if (time + way.time > problem.secondsPerCrew) continue;
      const before = new Map(kit);
      for (const [item, count] of way.needs) kit.set(item, Math.max(kit.get(item) ?? 0, count));
      times[crew] = time + way.time;
      place(valve + 1, next(choice), {
        served: state.served + 1,
        useCost: state.useCost + way.cost,
        second: state.second + 1 - way.chance,
      });
      times[crew] = time;
      kits[crew] = before;
    }
    place(valve + 1, next(choices), state);
  };
  place(0, 0, { served: 0, useCost: 0, second: 0 });
  return { best, leaves };
}
