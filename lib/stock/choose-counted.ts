/*
 * Takes a number of what is counted and has no serial numbers.
 * Invariant: never more than are free, each model once.
 * Not here: units (choose-units.ts).
 * Read next: counted-holds.ts.
 */
import type { DateRange } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';

interface Counted {
  readonly model: string;
  readonly count: number;
}

interface ChooseCounted {
  readonly needs: readonly Counted[];
  /** Free over the whole window, by model. */
  readonly free: Readonly<Record<string, number>>;
  readonly window: DateRange;
}

export function chooseCounted({ needs, free, window }: ChooseCounted): Result<readonly Counted[]> {
  const counts = new Map<string, number>();
  for (const { model, count } of needs) counts.set(model, (counts.get(model) ?? 0) + count);
  for (const [model, count] of counts) {
    const there = Math.max(0, free[model] ?? 0);
    if (there < count)
      return failed({
        code: 'pieces-not-free',
        sentence: `${count} of ${model} are needed from ${window.starts_on} to before ${window.ends_before}, and ${there} are free.`,
      });
  }
  return ok([...counts].map(([model, count]) => ({ model, count })));
}
