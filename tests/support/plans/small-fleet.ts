/*
 * A hand-made fleet problem of two classes and three drives, small enough to reckon on paper; tests change one thing at a time.
 *
 * Twenty easy valves and four heavy ones; `light` does only the easy ones, `heavy` does both but is slow, `swift` does both and is dear.
 */
import type { Alternative, FleetItem, LineClass } from '#lib/equipment/choices.ts';
import type { FleetProblem } from '#lib/fleet/fleet-problem.ts';
import { toMinor } from '#lib/money/money.ts';
import { kilograms, seconds } from '#lib/units/quantity.ts';

export function drive(id: string, figures: { readonly cost: number; readonly free: number }): FleetItem {
  return { id, cost_minor: toMinor(figures.cost), mass: kilograms(10), pieces: 1, free: figures.free };
}

export function way(
  item: string,
  figures: { readonly time: number; readonly chance?: number; readonly count?: number },
): Alternative {
  return {
    id: item,
    needs: [{ item, count: figures.count ?? 1 }],
    timePerValve: seconds(figures.time),
    cost_minor: toMinor(0),
    chance: figures.chance ?? 1,
  };
}

export function lineClass(
  id: string,
  figures: { readonly qty: number; readonly ways: readonly Alternative[] },
): LineClass {
  return {
    id,
    tags: [id],
    qty: figures.qty,
    moveTime: seconds(100),
    families: [{ id: 'only', cores: figures.ways, slots: [] }],
  };
}

/** Labour is worth a minor unit a second, so that times and money add up by eye. */
export function smallFleet(changes: Partial<FleetProblem> = {}): FleetProblem {
  return {
    items: [
      drive('light', { cost: 1000, free: 2 }),
      drive('heavy', { cost: 5000, free: 2 }),
      drive('swift', { cost: 20_000, free: 2 }),
    ],
    classes: [
      lineClass('easy', {
        qty: 20,
        ways: [
          way('light', { time: 200, chance: 0.75 }),
          way('heavy', { time: 300, chance: 0.75 }),
          way('swift', { time: 100, chance: 1 }),
        ],
      }),
      lineClass('hard', {
        qty: 4,
        ways: [way('heavy', { time: 300, chance: 0.5 }), way('swift', { time: 100, chance: 1 })],
      }),
    ],
    crews: 1,
    secondsPerCrew: seconds(10_000),
    labour_minor_per_hour: toMinor(3600),
    preference: 'cost',
    budget: { seconds: 30, nodes: 5000 },
    ...changes,
  };
}
