/*
 * The one-crew fleet problem as one would first write it, for benches to be compared with: each role of a class chooses by
 * assignment variables, and two choices that do not go together exclude each other.
 */
import type { Alternative, LineClass } from '#lib/equipment/choices.ts';
import type { FleetProblem } from '#lib/fleet/fleet-problem.ts';
import { type Entry, type ModelBuilder, type SparseModel, startModel } from '#lib/milp/sparse-model.ts';

export type OneCrew = Omit<FleetProblem, 'preference' | 'budget'>;

export function genericProgram(problem: OneCrew): SparseModel {
  const builder = startModel();
  const carried = new Map(
    problem.items.map(({ id, cost_minor, free }) => [
      id,
      builder.column({ cost: cost_minor, lower: 0, upper: free, integer: true }),
    ]),
  );
  const time: Entry[] = [];
  for (const lineClass of problem.classes) addClass({ problem, builder, carried, lineClass, time });
  builder.row({ lower: 0, upper: problem.secondsPerCrew, entries: time });
  return builder.build();
}

interface Adding {
  readonly problem: OneCrew;
  readonly builder: ModelBuilder;
  readonly carried: ReadonlyMap<string, number>;
  readonly lineClass: LineClass;
  readonly time: Entry[];
}

function addClass(adding: Adding): void {
  const { lineClass, builder } = adding;
  const roles = 1 + Math.max(...lineClass.families.map(({ slots }) => slots.length));
  const rolesOf = lineClass.families.map(({ cores, slots }) => [cores, ...slots]);
  /** By role: what may be chosen, each once, whatever family it is in. */
  const columns = Array.from({ length: roles }, (_, role) => {
    const choices = new Map(rolesOf.flatMap((family) => (family[role] ?? []).map((one) => [one.id, one])));
    return new Map([...choices].map(([id, one]) => [id, addChoice({ ...adding, one, moves: role === 0 })]));
  });
  for (const [role, choices] of columns.entries()) {
    const isAlways = rolesOf.every((family) => family[role] !== undefined);
    builder.row({ lower: isAlways ? 1 : 0, upper: 1, entries: [...choices.values()].map((one): Entry => [one, 1]) });
  }
  for (const family of rolesOf) {
    for (const [role, choices] of columns.entries()) {
      const options = family[role];
      if (role === 0 || options === undefined) continue;
      const fitting = new Set(options.map(({ id }) => id));
      const others = [...choices].filter(([id]) => !fitting.has(id)).map(([, column]) => column);
      for (const core of family[0] ?? []) {
        const column = columns[0]?.get(core.id) ?? 0;
        for (const other of others) exclude({ builder, column, other });
        // A core of a family with this role needs a choice for it, also where others of the class do not.
        builder.row({
          lower: 0,
          upper: Number.POSITIVE_INFINITY,
          entries: [...[...choices.values()].map((one): Entry => [one, 1]), [column, -1]],
        });
      }
    }
  }
}

function exclude(at: { readonly builder: ModelBuilder; readonly column: number; readonly other: number }): void {
  at.builder.row({
    lower: 0,
    upper: 1,
    entries: [
      [at.column, 1],
      [at.other, 1],
    ],
  });
}

/** All valves of a class are done alike: with one crew nothing is gained by mixing while its hours suffice. */
function addChoice(adding: Adding & { readonly one: Alternative; readonly moves: boolean }): number {
  const { problem, builder, carried, lineClass, time, one, moves } = adding;
  const each = one.timePerValve + (moves ? lineClass.moveTime : 0);
  const cost = lineClass.qty * (one.cost_minor + (each * problem.labour_minor_per_hour) / 3600);
  const column = builder.column({ cost, lower: 0, upper: 1, integer: true });
  time.push([column, lineClass.qty * each]);
  for (const { item, count } of one.needs) {
    builder.row({
      lower: Number.NEGATIVE_INFINITY,
      upper: 0,
      entries: [
        [column, count],
        [carried.get(item) ?? 0, -1],
      ],
    });
  }
  return column;
}
