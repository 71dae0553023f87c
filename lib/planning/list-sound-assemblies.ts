/*
 * The assemblies of one line, each worked out a second time before it is shown.
 * Invariant: an assembly that the independent check does not find too is an incident, never shown.
 * Not here: finding them (../kits/list-assemblies.ts) and those of a plan (work-out.ts).
 * Read next: ../checking/check-assembly.ts.
 */
import { checkAssembly } from '#lib/checking/check-assembly.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { type ListedAssemblies, type ListInput, listAssemblies } from '#lib/kits/list-assemblies.ts';

export function listSoundAssemblies(input: ListInput): ListedAssemblies {
  return holdSound(input, listAssemblies(input));
}

export function holdSound(facts: Omit<ListInput, 'limit' | 'constraints'>, listed: ListedAssemblies): ListedAssemblies {
  for (const assembly of listed.assemblies) {
    const wrong = checkAssembly({ ...facts, assembly });
    const told = wrong.map(({ sentence }) => sentence).join(' ');
    invariant(
      wrong.length === 0,
      `The independent check does not agree with assembly ${assembly.id} of ${facts.lineDuty.line.tag}: ${told}`,
    );
  }
  return listed;
}
