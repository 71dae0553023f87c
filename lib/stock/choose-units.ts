/*
 * Chooses the serial numbers that a booking takes.
 * Invariant: only free units are chosen, each once; the same question gives the same choice.
 * Not here: writing the booking.
 * Read next: free-units.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { freeUnits } from './free-units.ts';
import type { StockQuestion, Unit } from './unit.ts';

export interface ChooseUnitsInput extends StockQuestion {
  readonly needs: readonly { readonly model: string; readonly count: number }[];
  /** The depot that despatches: its units go first. */
  readonly depot: string;
}

export function chooseUnits(input: ChooseUnitsInput): Result<readonly Unit[]> {
  const free = [...freeUnits(input)].sort((a, b) => rank(a) - rank(b) || (a.serial < b.serial ? -1 : 1));
  const chosen: Unit[] = [];
  for (const { model, count } of totals(input.needs)) {
    const some = free.filter((unit) => unit.model === model).slice(0, count);
    if (some.length < count) {
      return failed({
        code: 'units-not-free',
        sentence: `${count} of ${model} are needed from ${input.window.starts_on} to before ${input.window.ends_before}, and ${some.length} are free.`,
      });
    }
    chosen.push(...some);
  }
  return ok(chosen);

  function rank(unit: Unit): number {
    return unit.depot === input.depot ? 0 : 1;
  }
}

function totals(needs: ChooseUnitsInput['needs']): readonly { readonly model: string; readonly count: number }[] {
  const counts = new Map<string, number>();
  for (const { model, count } of needs) counts.set(model, (counts.get(model) ?? 0) + count);
  return [...counts].map(([model, count]) => ({ model, count }));
}
