/*
 * The same fleet problem written another way: every whole assembly of every class and crew is a column of its own.
 */
import type { Alternative, LineClass } from '#lib/equipment/choices.ts';
import { type MilpAnswer, solveMilp } from '#lib/milp/solve.ts';
import { type Entry, type ModelBuilder, startModel } from '#lib/milp/sparse-model.ts';
import type { Case } from './fleet-cases.ts';

/** Least cost at which every valve is done; presolve is off, since this answer is a proof. */
export async function leastListedCost(
  problem: Case,
): Promise<{ readonly answer: MilpAnswer; readonly columns: number }> {
  const builder = startModel();
  const carried = carriedColumns(problem, builder);
  const time: Entry[][] = carried.map(() => []);
  for (const lineClass of problem.classes) {
    const done: Entry[] = [];
    for (const [crew, kit] of carried.entries()) {
      for (const parts of assembliesOf(lineClass)) {
        const taken = addAssembly({ problem, builder, lineClass, parts, kit });
        done.push([taken.column, 1]);
        time[crew]?.push([taken.column, taken.time]);
      }
    }
    builder.row({ lower: lineClass.qty, upper: lineClass.qty, entries: done });
  }
  for (const entries of time) builder.row({ lower: 0, upper: problem.secondsPerCrew, entries });
  const model = builder.build();
  return { answer: await solveMilp(model, { presolve: 'off', seconds: 240 }), columns: model.columns };
}

type Kit = ReadonlyMap<string, number>;

/** Pieces of each model with each crew, within what is free. */
function carriedColumns({ items, crews }: Case, builder: ModelBuilder): readonly Kit[] {
  const kits = Array.from(
    { length: crews },
    () =>
      new Map(
        items.map(({ id, cost_minor, free }) => [
          id,
          builder.column({ cost: cost_minor, lower: 0, upper: free, integer: true }),
        ]),
      ),
  );
  for (const { id, free } of items) {
    const entries = kits.map((kit): Entry => [kit.get(id) ?? 0, 1]);
    builder.row({ lower: 0, upper: free, entries });
  }
  return kits;
}

function assembliesOf({ families }: LineClass): readonly (readonly Alternative[])[] {
  return families.flatMap(({ cores, slots }) =>
    [cores, ...slots].reduce<readonly (readonly Alternative[])[]>(
      (chosen, slot) => chosen.flatMap((before) => slot.map((one) => [...before, one])),
      [[]],
    ),
  );
}

/** Valves of a class that a crew does with one assembly, and whether it uses it at all. */
function addAssembly(at: {
  readonly problem: Case;
  readonly builder: ModelBuilder;
  readonly lineClass: LineClass;
  readonly parts: readonly Alternative[];
  readonly kit: Kit;
}): { readonly column: number; readonly time: number } {
  const { problem, builder, lineClass, parts, kit } = at;
  const time = parts.reduce((sum: number, { timePerValve }) => sum + timePerValve, lineClass.moveTime);
  const cost = parts.reduce((sum, { cost_minor }) => sum + cost_minor, (time * problem.labour_minor_per_hour) / 3600);
  const column = builder.column({ cost, lower: 0, upper: lineClass.qty, integer: true });
  const used = builder.column({ cost: 0, lower: 0, upper: 1, integer: true });
  builder.row({
    lower: Number.NEGATIVE_INFINITY,
    upper: 0,
    entries: [
      [column, 1],
      [used, -lineClass.qty],
    ],
  });
  for (const { item, count } of parts.flatMap(({ needs }) => needs)) {
    builder.row({
      lower: Number.NEGATIVE_INFINITY,
      upper: 0,
      entries: [
        [used, count],
        [kit.get(item) ?? 0, -1],
      ],
    });
  }
  return { column, time };
}
