/*
 * Holds the work of a plan against the assemblies it names: each is there, is one of its class, and is made of what the plan counted.
 * Invariant: the work is the fleet plan's own, piece by piece; no assembly stands there for nothing.
 * Not here: sums and bounds of the fleet plan (check-plan.ts).
 * Read next: crew-needs.ts.
 */
import type { ItemNeed, LineClass } from '#lib/equipment/choices.ts';
import { assemblyNeeds } from './crew-needs.ts';
import { type Discrepancy, holds } from './discrepancy.ts';
import type { OutcomeFacts, WorkPiece } from './outcome-facts.ts';

export function checkWork(facts: OutcomeFacts): readonly Discrepancy[] {
  const { preference, fleet, work, assemblies } = facts.outcome;
  const named = new Set(work.map(({ assembly }) => assembly));
  const idle = Object.keys(assemblies).filter((key) => !named.has(key));
  const [planned, told] = [fleet.work.map(pieceOf), work.map(pieceOf)];
  return [
    ...holds(preference === fleet.preference, {
      code: 'outcome-preference',
      sentence: `The plan by ${fleet.preference} is given out as one by ${preference}.`,
      expected: fleet.preference,
      found: preference,
    }),
    ...holds(planned.join('\n') === told.join('\n'), {
      code: 'outcome-work',
      sentence: 'The work given out is not the work of the plan.',
      expected: planned.find((piece, index) => piece !== told[index]) ?? `${planned.length} pieces of work`,
      found: told.find((piece, index) => piece !== planned[index]) ?? `${told.length} pieces of work`,
    }),
    ...holds(idle.length === 0, {
      code: 'outcome-assembly-idle',
      sentence: `No work is done with ${idle.join(', ')}.`,
      expected: 'assemblies that the work names',
      found: idle.join(', '),
    }),
    ...work.flatMap((piece) => checkPiece(facts, piece)),
  ];
}

function pieceOf({ classId, crew, qty, family, core, slots }: Omit<WorkPiece, 'assembly'>): string {
  return [classId, crew, qty, family, core, ...slots].join(' ');
}

function checkPiece({ classes, outcome }: OutcomeFacts, piece: WorkPiece): readonly Discrepancy[] {
  const assembly = outcome.assemblies[piece.assembly];
  if (assembly === undefined) {
    return holds(false, {
      code: 'outcome-assembly-missing',
      sentence: `The work names assembly ${piece.assembly}, which is not there.`,
      expected: Object.keys(outcome.assemblies).join(', '),
      found: piece.assembly,
    });
  }
  const lineClass = classes.find(({ id }) => id === piece.classId);
  const counted = lineClass === undefined ? null : countedNeeds(lineClass, piece);
  const needed = showNeeds([...assemblyNeeds(assembly)].map(([item, count]) => ({ item, count })));
  return [
    ...holds(piece.assembly === `${piece.classId}|${assembly.id}`, {
      code: 'outcome-assembly-class',
      sentence: `Work of class ${piece.classId} is done with ${piece.assembly}, which is not an assembly of that class.`,
      expected: `${piece.classId}|${assembly.id}`,
      found: piece.assembly,
    }),
    ...holds(counted !== null && showNeeds(counted) === needed, {
      code: 'outcome-assembly-parts',
      sentence: `Assembly ${piece.assembly} is not made of what the plan counted for it.`,
      expected: counted === null ? 'a choice of the class' : showNeeds(counted),
      found: needed,
    }),
  ];
}

/** What the choices say that the piece of work needs at once; null where they have no such choice. */
function countedNeeds(lineClass: LineClass, { family, core, slots }: WorkPiece): readonly ItemNeed[] | null {
  const group = lineClass.families.find(({ id }) => id === family);
  const chosen = [
    group?.cores.find(({ id }) => id === core),
    ...slots.map((slot, index) => group?.slots[index]?.find(({ id }) => id === slot)),
  ].filter((one) => one !== undefined);
  return group === undefined || chosen.length !== group.slots.length + 1 ? null : chosen.flatMap(({ needs }) => needs);
}

function showNeeds(needs: readonly ItemNeed[]): string {
  const counts = new Map<string, number>();
  for (const { item, count } of needs) counts.set(item, (counts.get(item) ?? 0) + count);
  return [...counts]
    .map(([item, count]) => `${count} ${item}`)
    .toSorted()
    .join(', ');
}
