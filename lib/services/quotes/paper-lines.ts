/*
 * The lines of a schedule as papers tell them: what each crew does with which assembly, and what nobody does.
 * Invariant: the parts of a line hold all its valves, each once; the crews are counted from 1.
 * Not here: why valves are left (papers-of.ts).
 * Read next: papers-of.ts.
 */
import type { PaperLine } from '#lib/documents/papers/paper-inputs.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { PlanOutcome, WorkedOut } from '#lib/planning/worked-out.ts';
import { crewOffset } from '#lib/services/plans/crew-numbers.ts';

interface Shared {
  readonly lines: readonly ScheduleLine[];
  readonly worked: Pick<WorkedOut, 'unserved' | 'duties'>;
  readonly outcome: Pick<PlanOutcome, 'lines' | 'assemblies' | 'kits'>;
}

export function paperLines({ lines, worked, outcome }: Shared): readonly PaperLine[] {
  const planned = new Map(outcome.lines.map((line) => [line.tag, line]));
  const classOf = new Map(worked.unserved.map(({ tag, classId }) => [tag, classId]));
  const duties = new Map(worked.duties.map((duty) => [duty.tag, duty]));
  return lines.flatMap((line) => {
    const duty = duties.get(line.tag);
    if (!duty) return [];
    const plan = planned.get(line.tag);
    const classId = plan?.classId ?? classOf.get(line.tag) ?? line.tag;
    return partsOf({ line, parts: plan?.parts ?? [] }).map(
      ({ part, qty, before }): PaperLine => ({
        classId,
        line: qty === line.qty ? line : { ...line, qty },
        duty,
        assembly: outcome.assemblies[part?.assembly ?? ''] ?? null,
        ...(part ? { crew: part.crew + crewOffset(outcome) } : {}),
        ...(qty === line.qty ? {} : { share: { before, of: line.qty } }),
      }),
    );
  });
}

type PlannedPart = PlanOutcome['lines'][number]['parts'][number];

/** The parts of a line one after another, and last what nobody serves. */
function partsOf({ line, parts }: { readonly line: ScheduleLine; readonly parts: readonly PlannedPart[] }) {
  const held = parts.map((part, index) => ({
    part,
    qty: part.qty,
    before: parts.slice(0, index).reduce((sum, { qty }) => sum + qty, 0),
  }));
  const served = parts.reduce((sum, { qty }) => sum + qty, 0);
  return served === line.qty ? held : [...held, { part: undefined, qty: line.qty - served, before: served }];
}
