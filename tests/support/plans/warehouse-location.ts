import type { LineClass } from '#lib/equipment/choices.ts';
import type { FleetProblem } from '#lib/fleet/fleet-problem.ts';
import { type SparseModel, startModel } from '#lib/milp/sparse-model.ts';
import { toMinor } from '#lib/money/money.ts';
import { kilograms, seconds } from '#lib/units/quantity.ts';

/** A warehouse-location problem: fixed cost and capacity of each warehouse, demand and cost row of each customer. */
export interface WarehouseLocation {
  readonly warehouses: readonly { readonly capacity: number; readonly fixed: number }[];
  readonly customers: readonly { readonly demand: number; readonly costs: readonly number[] }[];
}

/** OR-Library's form: m n, then capacity and fixed cost m times, then demand and m costs n times, all split by white space. */
export function readOrLibrary(text: string): WarehouseLocation {
  const numbers = text.trim().split(/\s+/).map(Number);
  let place = 0;
  const next = (): number => {
    const value = numbers[place];
    place += 1;
    if (value === undefined || !Number.isFinite(value)) throw new Error(`No number at place ${place} of the instance.`);
    return value;
  };
  const m = next();
  const n = next();
  const warehouses = Array.from({ length: m }, () => ({ capacity: next(), fixed: next() }));
  const customers = Array.from({ length: n }, () => ({ demand: next(), costs: Array.from({ length: m }, next) }));
  return { warehouses, customers };
}

/** OR-Library's costs have at most five decimals; money is whole minor units. */
export const MINOR_PER_COST = 100_000;

/** Without capacities: an item is a warehouse, a line a customer with one way for each warehouse. */
export function asFleetProblem({ warehouses, customers }: WarehouseLocation): FleetProblem {
  const minor = (cost: number): number => Math.round(cost * MINOR_PER_COST);
  const classes = customers.map(
    ({ costs }, customer): LineClass => ({
      id: `customer-${customer}`,
      tags: [`customer-${customer}`],
      qty: 1,
      moveTime: seconds(0),
      families: [
        {
          id: 'supply',
          cores: costs.map((cost, warehouse) => ({
            id: `from-${warehouse}`,
            needs: [{ item: `warehouse-${warehouse}`, count: 1 }],
            timePerValve: seconds(0),
            cost_minor: minor(cost),
            chance: 1,
          })),
          slots: [],
        },
      ],
    }),
  );
  const items = warehouses.map(({ fixed }, warehouse) => ({
    id: `warehouse-${warehouse}`,
    cost_minor: toMinor(minor(fixed)),
    mass: kilograms(0),
    pieces: 1,
    free: 1,
  }));
  return {
    classes,
    items,
    crews: 1,
    secondsPerCrew: seconds(1),
    labour_minor_per_hour: toMinor(0),
    preference: 'cost',
    budget: { seconds: 60, nodes: 20_000 },
  };
}

/** With capacities, as a program: shares of customers may be split over warehouses (OR-Library) or not (single source). */
export function asProgram(problem: WarehouseLocation, supply: 'split' | 'single source'): SparseModel {
  const builder = startModel();
  const open = problem.warehouses.map(({ fixed }) =>
    builder.column({ cost: fixed, lower: 0, upper: 1, integer: true }),
  );
  const share = problem.customers.map(({ costs }) =>
    costs.map((cost) => builder.column({ cost, lower: 0, upper: 1, integer: supply === 'single source' })),
  );
  for (const [customer, columns] of share.entries()) {
    builder.row({ lower: 1, upper: 1, entries: columns.map((column) => [column, 1] as const) });
    for (const [warehouse, column] of columns.entries()) {
      builder.row({
        lower: Number.NEGATIVE_INFINITY,
        upper: 0,
        entries: [
          [column, 1],
          [open[warehouse] ?? -1, -1],
        ],
      });
    }
    if (problem.customers[customer] === undefined) throw new Error('Every row of shares has its customer.');
  }
  for (const [warehouse, { capacity }] of problem.warehouses.entries()) {
    const loads = share.map(
      (columns, customer) => [columns[warehouse] ?? -1, problem.customers[customer]?.demand ?? 0] as const,
    );
    builder.row({ lower: Number.NEGATIVE_INFINITY, upper: 0, entries: [...loads, [open[warehouse] ?? -1, -capacity]] });
  }
  return builder.build();
}
