/*
 * How many valves of a schedule no equipment fits: what a plan's own count of valves leaves out.
 * Invariant: with it, every screen and paper counts all valves of the schedule, whatever fits them.
 * Not here: why nothing fits (../quotes/papers-of.ts, line by line).
 * Read next: plan-view.ts.
 */
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { WorkedOut } from '#lib/planning/worked-out.ts';

export function fittingNothing({
  worked,
  lines,
}: {
  readonly worked: Pick<WorkedOut, 'unserved'>;
  readonly lines: readonly Pick<ScheduleLine, 'tag' | 'qty'>[];
}): number {
  const qty = new Map(lines.map((line) => [line.tag, line.qty]));
  return worked.unserved.reduce((sum, { tag }) => sum + (qty.get(tag) ?? 1), 0);
}
