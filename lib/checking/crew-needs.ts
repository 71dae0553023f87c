/*
 * What a crew has to carry for its work, worked out a second time: the parts of its assemblies, and what it takes to run the drives.
 * Invariant: a crew works one valve at a time, so assemblies share what they have in common, at the larger count; parts of one assembly add up.
 * Not here: what a drive takes (power-needs.ts) and comparing (check-crew-kits.ts).
 * Read next: power-needs.ts.
 */
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { AccessoryModel } from '#lib/equipment/model.ts';
import type { Counts, CrewNeedsInput, CrewPiece } from './crew-work.ts';
import { powerNeeds } from './power-needs.ts';

export function crewNeeds(input: CrewNeedsInput): Counts {
  const accessories = input.models
    .filter((model) => model.role === 'accessory')
    .toSorted((one, other) => (one.number < other.number ? -1 : 1));
  return largest([
    partsNeeded(input.pieces),
    ...powerNeeds({ ...input, accessories }),
    ...lanyards(input, accessories),
  ]);
}

/** Without what runs the drives. */
export function partsNeeded(pieces: readonly CrewPiece[]): Counts {
  return largest(pieces.map(({ assembly }) => assemblyNeeds(assembly)));
}

/** One adapter is on the valve at a time; it may come back behind other extensions. */
export function assemblyNeeds({ parts }: Assembly): Counts {
  const behind = parts.adapters.map((_, index) => parts.adapterExtensions?.[index] ?? parts.extensions);
  return added([
    ...[parts.drive, parts.head, parts.restraint, ...parts.options, ...new Set(parts.adapters)].map(one),
    largest(behind.map((extensions) => added(extensions.map(one)))),
    ...parts.accessories.map(({ number, count }) => new Map([[number, count]])),
  ]);
}

/** Everything that is lifted is tied: a set of lanyards for a crew with a drive. */
function lanyards({ pieces }: CrewNeedsInput, accessories: readonly AccessoryModel[]): readonly Counts[] {
  const set = accessories.find(({ facts }) => facts.kind === 'lanyards');
  return pieces.length === 0 || set === undefined ? [] : [one(set.number)];
}

const one = (number: string): Counts => new Map([[number, 1]]);

function added(needs: readonly Counts[]): Counts {
  const counts = new Map<string, number>();
  for (const [item, count] of needs.flatMap((need) => [...need])) counts.set(item, (counts.get(item) ?? 0) + count);
  return counts;
}

function largest(needs: readonly Counts[]): Counts {
  const counts = new Map<string, number>();
  for (const [item, count] of needs.flatMap((need) => [...need])) {
    counts.set(item, Math.max(counts.get(item) ?? 0, count));
  }
  return counts;
}
