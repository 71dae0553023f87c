/*
 * Tries the adapters of an assembly on every size that the wheel or nut may turn out to have.
 * Invariant: each size of the range is taken by one adapter whole, not partly by two.
 * Not here: whether each adapter is of any use (check-grip.ts).
 * Read next: check-findings.ts.
 */
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { RULES_OF } from '#lib/rules/all-rules.ts';
import type { GripCase } from '#lib/rules/facts.ts';
import { placeOf } from '#lib/rules/place-facts.ts';
import type { Subject } from './chain.ts';
import { type Discrepancy, told } from './discrepancy.ts';

/** Sizes tried between the ends of a range, besides those where an adapter begins or ends. */
const BETWEEN = 16;

export function checkCover(subject: Subject): readonly Discrepancy[] {
  const { line, duty } = subject.lineDuty;
  const facts = { line, duty, site: subject.site, place: placeOf({ line, duty, site: subject.site }) };
  const open = casesOf(subject).filter(
    (gripCase) =>
      !subject.chain.links.some((link) =>
        RULES_OF.case.every((rule) => rule.severity !== 'refusal' || !rule.speaks({ ...facts, ...link, gripCase })),
      ),
  );
  const [first] = open;
  if (first === undefined) return [];
  return [
    told({
      code: 'assembly-range-uncovered',
      sentence: `No adapter of the assembly takes ${tell(first)}, which this line may have.`,
      expected: 'an adapter for every size of the range',
      found: `${open.length} sizes without one`,
    }),
  ];
}

function casesOf({ lineDuty, chain }: Subject): readonly GripCase[] {
  const { grip } = lineDuty.duty;
  if (grip.kind === 'none') return [];
  if (grip.kind === 'wheel') {
    const { low, high } = grip.wheelDiameter ?? WORKING_CONSTANTS.anyWheel;
    const edges = chain.adapters.flatMap(({ facts }) =>
      facts.wheel === undefined ? [] : [facts.wheel.diameter.low, facts.wheel.diameter.high],
    );
    const { wheelSpokes: spokes } = grip;
    const counts = spokes === undefined ? [null] : wholeNumbers(spokes);
    return along({ low, high, edges }).flatMap((diameter_m) =>
      counts.map(
        (count) => ({ kind: 'wheel', diameter_m, spokes: count, dish_deg: grip.wheelDish?.high ?? 0 }) as const,
      ),
    );
  }
  const depths = along({ low: grip.depthToNut?.low ?? 0, high: grip.depthToNut?.high ?? 0, edges: [] });
  const sizes = grip.nutSizes?.length ? grip.nutSizes.flatMap((size) => along({ ...size, edges: [] })) : [null];
  const shapes = grip.nutShape === undefined ? WORKING_CONSTANTS.usualNutShapes : [grip.nutShape];
  return sizes.flatMap((acrossFlats_m) =>
    depths.flatMap((depth_m) => shapes.map((shape) => ({ kind: 'nut', shape, acrossFlats_m, depth_m }) as const)),
  );
}

/** Both ends, evenly between them, and on, just before and just after every edge within. */
function along(at: {
  readonly low: number;
  readonly high: number;
  readonly edges: readonly number[];
}): readonly number[] {
  const { low, high, edges } = at;
  if (high <= low) return [low];
  const even = Array.from({ length: BETWEEN + 1 }, (_, step) => low + ((high - low) * step) / BETWEEN);
  const hair = (high - low) / 1000;
  const near = edges.flatMap((edge) => [edge - hair, edge, edge + hair]).filter((value) => value > low && value < high);
  return [...even, ...near];
}

function wholeNumbers({ low, high }: { readonly low: number; readonly high: number }): readonly number[] {
  return Array.from({ length: high - low + 1 }, (_, step) => low + step);
}

function tell(gripCase: GripCase): string {
  return gripCase.kind === 'wheel'
    ? `a wheel of ${Math.round(gripCase.diameter_m * 1000)} mm with ${gripCase.spokes ?? 'any number of'} spokes and ${gripCase.dish_deg}° of dish`
    : `a ${gripCase.shape} nut of ${gripCase.acrossFlats_m === null ? 'any size' : `${Math.round(gripCase.acrossFlats_m * 1000)} mm`} at ${gripCase.depth_m} m`;
}
