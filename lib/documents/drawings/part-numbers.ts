/*
 * The numbers of an assembly's parts in the order of the chain, from the drive to the valve, then restraint, options and accessories.
 * Invariant: each number once, whatever set it stands in.
 * Not here: names and masses (the models), how many pieces (the plan).
 * Read next: ../../equipment/assembly.ts.
 */
import type { Assembly } from '#lib/equipment/assembly.ts';

/** Drive, head, extensions, adapters, restraint, options: what stands at the valve. */
export function chainNumbers({ parts }: Pick<Assembly, 'parts'>): readonly string[] {
  const behindAdapters = (parts.adapterExtensions ?? []).flat();
  return once([
    parts.drive,
    parts.head,
    ...parts.extensions,
    ...behindAdapters,
    ...parts.adapters,
    parts.restraint,
    ...parts.options,
  ]);
}

/** The chain and its accessories: all that is carried. */
export function partNumbers(assembly: Pick<Assembly, 'parts'>): readonly string[] {
  return once([...chainNumbers(assembly), ...assembly.parts.accessories.map(({ number }) => number)]);
}

const once = (numbers: readonly string[]): readonly string[] => [...new Set(numbers.filter((number) => number !== ''))];
