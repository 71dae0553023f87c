/*
 * Adds up what each line of a plan gets: its parts, what was asked, and the work of each crew that the parts come out of.
 * Invariant: every line of a class stands there once, and nothing is served that no crew does.
 * Not here: in which order lines are worked.
 * Read next: check-crew-kits.ts.
 */
import { atMost, type Discrepancy, holds, same } from './discrepancy.ts';
import type { OutcomeFacts, SharedLine } from './outcome-facts.ts';

export function checkShareOut(facts: OutcomeFacts): readonly Discrepancy[] {
  const { outcome } = facts;
  const asked = new Map(facts.lines.map(({ tag, qty }) => [tag, qty]));
  const served = outcome.lines.reduce((sum, line) => sum + line.served, 0);
  return [
    ...checkTags(facts),
    ...outcome.lines.flatMap((shared) => checkLine({ outcome, shared, asked: asked.get(shared.tag) ?? 0 })),
    ...checkWorkDone(facts),
    ...same({
      code: 'outcome-served',
      what: 'The number of valves served over all lines',
      expected: outcome.fleet.served,
      found: served,
    }),
  ];
}

/** Lines that something fits are shared out, each once and in its own class. */
function checkTags({ classes, outcome }: OutcomeFacts): readonly Discrepancy[] {
  const asked = classes.flatMap(({ id, tags }) => tags.map((tag) => `${tag} of class ${id}`)).toSorted();
  const told = outcome.lines.map(({ tag, classId }) => `${tag} of class ${classId}`).toSorted();
  return holds(asked.join('\n') === told.join('\n'), {
    code: 'outcome-lines',
    sentence: 'The lines of the plan are not the lines of its classes, each once.',
    expected: asked.find((line, index) => line !== told[index]) ?? `${asked.length} lines`,
    found: told.find((line, index) => line !== asked[index]) ?? `${told.length} lines`,
  });
}

interface Line {
  readonly outcome: OutcomeFacts['outcome'];
  readonly shared: SharedLine;
  /** What the list asks for; none for a line that is not in it. */
  readonly asked: number;
}

function checkLine({ outcome, shared, asked }: Line): readonly Discrepancy[] {
  const { tag, classId, parts } = shared;
  const whole = parts.every(({ qty }) => Number.isInteger(qty) && qty > 0);
  const strange = parts.filter(
    ({ assembly }) => outcome.assemblies[assembly] === undefined || !assembly.startsWith(`${classId}|`),
  );
  return [
    ...same({
      code: 'outcome-line-asked',
      what: `The number asked for on ${tag}`,
      expected: asked,
      found: shared.asked,
    }),
    ...same({
      code: 'outcome-line-served',
      what: `The number served of ${tag}`,
      expected: parts.reduce((sum, { qty }) => sum + qty, 0),
      found: shared.served,
    }),
    ...atMost({
      code: 'outcome-line-overserved',
      what: `The number served of ${tag}`,
      expected: asked,
      found: shared.served,
    }),
    ...holds(whole, {
      code: 'outcome-part-of-valve',
      sentence: `A crew does no whole number of valves of ${tag}.`,
      expected: 'whole numbers from 1',
      found: parts.map(({ qty }) => qty).join(', '),
    }),
    ...holds(strange.length === 0, {
      code: 'outcome-line-assembly',
      sentence: `${tag} is done with ${strange.map(({ assembly }) => assembly).join(', ')}, which is no assembly for it.`,
      expected: `an assembly of class ${classId}`,
      found: strange.map(({ assembly }) => assembly).join(', '),
    }),
  ];
}

/** Crew by crew and assembly by assembly, the lines get what the work comes to. */
function checkWorkDone({ outcome }: OutcomeFacts): readonly Discrepancy[] {
  const done = totals(outcome.work);
  const given = totals(outcome.lines.flatMap(({ parts }) => parts));
  return [...new Set([...done.keys(), ...given.keys()])].flatMap((key) =>
    same({
      code: 'outcome-work-shared',
      what: `The number of valves that lines get of ${key}`,
      expected: done.get(key) ?? 0,
      found: given.get(key) ?? 0,
    }),
  );
}

function totals(
  pieces: readonly { readonly crew: number; readonly qty: number; readonly assembly: string }[],
): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (const { crew, qty, assembly } of pieces) {
    const key = `crew ${crew} with ${assembly}`;
    sums.set(key, (sums.get(key) ?? 0) + qty);
  }
  return sums;
}
