/*
 * The cases that a wheel or nut of uncertain size may turn out to be: together they stand for the whole range.
 * Invariant: a set of adapters that takes every case takes every size in the range, since an adapter's range has no holes.
 * Not here: which adapter takes which case (grip-elements.ts).
 * Read next: grip-elements.ts.
 */
import type { AdapterModel } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { WORKING_HEIGHT_M } from '#lib/rules/buried.ts';
import type { GripCase, LineFacts } from '#lib/rules/facts.ts';

const { anyWheel: ANY_WHEEL, usualNutShapes: USUAL_SHAPES } = WORKING_CONSTANTS;

/** All cases, and at the end the likeliest one. */
export function gripCases({
  facts,
  adapters,
}: {
  readonly facts: LineFacts;
  readonly adapters: readonly AdapterModel[];
}): readonly GripCase[] {
  const likeliest = likeliestCase(facts);
  if (likeliest === null) return [];
  const cases = likeliest.kind === 'wheel' ? wheelCases(facts, adapters) : nutCases(facts, adapters);
  return [...cases, likeliest];
}

/** The single likeliest case, for the order of a covering set. */
export function likeliestCase(facts: LineFacts): GripCase | null {
  const { grip } = facts.duty;
  if (grip.kind === 'none') return null;
  if (grip.kind === 'wheel') {
    return {
      kind: 'wheel',
      diameter_m: grip.wheelDiameter?.nominal ?? (ANY_WHEEL.low + ANY_WHEEL.high) / 2,
      spokes: grip.wheelSpokes === undefined ? null : Math.round((grip.wheelSpokes.low + grip.wheelSpokes.high) / 2),
      dish_deg: grip.wheelDish?.nominal ?? 0,
    };
  }
  return {
    kind: 'nut',
    shape: grip.nutShape ?? USUAL_SHAPES[0],
    acrossFlats_m: grip.nutSizes?.[0]?.nominal ?? null,
    depth_m: grip.depthToNut?.nominal ?? 0,
  };
}

function wheelCases(facts: LineFacts, adapters: readonly AdapterModel[]): readonly GripCase[] {
  const { grip } = facts.duty;
  const low = grip.wheelDiameter?.low ?? ANY_WHEEL.low;
  const high = grip.wheelDiameter?.high ?? ANY_WHEEL.high;
  const edges = new Set<number>([low, high]);
  for (const { facts: adapter } of adapters) {
    for (const edge of [adapter.wheel?.diameter.low, adapter.wheel?.diameter.high]) {
      if (edge !== undefined && edge > low && edge < high) edges.add(edge);
    }
  }
  const dish_deg = grip.wheelDish?.high ?? 0;
  const spokes = spokeCounts(facts);
  return withMiddles([...edges].toSorted((a, b) => a - b)).flatMap((diameter_m) =>
    spokes.map((count): GripCase => ({ kind: 'wheel', diameter_m, spokes: count, dish_deg })),
  );
}

function spokeCounts({ duty }: LineFacts): readonly (number | null)[] {
  const range = duty.grip.wheelSpokes;
  if (range === undefined) return [null];
  return Array.from({ length: range.high - range.low + 1 }, (_, step) => range.low + step);
}

function nutCases({ duty }: LineFacts, adapters: readonly AdapterModel[]): readonly GripCase[] {
  const { grip } = duty;
  const sizes = grip.nutSizes ?? [];
  const socketEdges = adapters.flatMap(({ facts }) =>
    (facts.sockets ?? []).flatMap(({ acrossFlats, slack }): readonly number[] => [acrossFlats - slack, acrossFlats]),
  );
  const keyEdges = adapters.flatMap(({ facts }): readonly number[] => [
    (facts.length?.low ?? facts.height) - WORKING_HEIGHT_M.high,
    (facts.length?.high ?? facts.height) - WORKING_HEIGHT_M.low,
  ]);
  const across: readonly (number | null)[] =
    sizes.length === 0 ? [null] : [...new Set(sizes.flatMap((size) => along({ ...size, edges: socketEdges })))];
  const depths = grip.depthToNut === undefined ? [0] : along({ ...grip.depthToNut, edges: keyEdges });
  const shapes = grip.nutShape === undefined ? USUAL_SHAPES : [grip.nutShape];
  return across.flatMap((acrossFlats_m) =>
    depths.flatMap((depth_m) => shapes.map((shape): GripCase => ({ kind: 'nut', shape, acrossFlats_m, depth_m }))),
  );
}

/** Both ends of a range, every edge within it at which an adapter starts or ends, and one value between every two. */
function along(at: {
  readonly low: number;
  readonly high: number;
  readonly edges: readonly number[];
}): readonly number[] {
  const within = at.edges.filter((edge) => edge > at.low && edge < at.high);
  return withMiddles([...new Set([at.low, ...within, at.high])].toSorted((a, b) => a - b));
}

/** Sorted values with one between every two. */
function withMiddles(sorted: readonly number[]): readonly number[] {
  return sorted.flatMap((value, index) => {
    const next = sorted[index + 1];
    return next === undefined ? [value] : [value, (value + next) / 2];
  });
}
