/*
 * Turns what a plan serves (family, core, slots) back into the parts of an assembly.
 * Invariant: the parts are exactly those whose needs the plan counted.
 * Not here: figures and settings (build-assembly.ts).
 * Read next: build-assembly.ts.
 */
import type { AssemblyParts } from '#lib/equipment/assembly.ts';
import type { Served } from '#lib/equipment/choices.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { readCoreId, readGripId, readReactionId } from './cores/alternative-ids.ts';
import type { Choices } from './find-choices.ts';

export function partsOf({
  classId,
  served,
  choices,
}: {
  readonly classId: string;
  readonly served: Pick<Served, 'family' | 'core' | 'slots'>;
  readonly choices: Pick<Choices, 'classes'>;
}): AssemblyParts {
  const family = choices.classes.find(({ id }) => id === classId)?.families.find(({ id }) => id === served.family);
  invariant(family !== undefined, `Class ${classId} has no family ${served.family}.`);
  invariant(
    family.cores.some(({ id }) => id === served.core) &&
      served.slots.length === family.slots.length &&
      served.slots.every((slot, index) => family.slots[index]?.some(({ id }) => id === slot)),
    `Family ${served.family} of class ${classId} does not hold ${served.core} with ${served.slots.join(' and ')}.`,
  );
  return partsFromIds({ core: served.core, slots: served.slots });
}

export function partsFromIds(ids: {
  readonly core: string;
  /** Grip, restraint and, where turns are counted, counter. */
  readonly slots: readonly string[];
}): AssemblyParts {
  const core = readCoreId(ids.core);
  const [gripText = '', reaction = '', counter] = ids.slots;
  const grip = readGripId(gripText);
  const { restraint, secondChain } = readReactionId(reaction);
  const accessories = [
    ...core.accessories.map((number) => ({ number, count: 1 })),
    ...grip.accessories,
    ...(secondChain === null ? [] : [{ number: secondChain, count: 1 }]),
  ];
  const first = grip.elements[0]?.extensions ?? [];
  const differ = grip.elements.some(({ extensions }) => extensions.join() !== first.join());
  return {
    drive: core.drive,
    gear: core.gear,
    head: core.head,
    extensions: first,
    adapters: grip.elements.map(({ adapter }) => adapter),
    ...(differ ? { adapterExtensions: grip.elements.map(({ extensions }) => extensions) } : {}),
    restraint,
    options: counter === undefined ? core.options : [...core.options, counter],
    accessories,
  };
}
