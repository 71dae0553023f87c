/*
 * How crews are named to people, and what each of them goes without.
 * Invariant: crews are counted from 1 on screens and papers, whatever the plan counts from.
 * Not here: working out what lacks (../../planning/carry-kits.ts).
 * Read next: ../quotes/papers-of.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import type { PlanOutcome } from '#lib/planning/worked-out.ts';

export function crewOffset(outcome: Pick<PlanOutcome, 'kits'>): number {
  return outcome.kits.some((kit) => kit.crew === 0) ? 1 : 0;
}

/** A sentence for each model that a crew should have and that is not free. */
export function lackingSentences({
  outcome,
  models,
}: {
  readonly outcome: Pick<PlanOutcome, 'kits'>;
  readonly models: readonly Model[];
}): readonly string[] {
  const offset = crewOffset(outcome);
  return outcome.kits.flatMap(({ crew, lacking }) =>
    (lacking ?? []).map(({ item, count }) => {
      const name = models.find(({ number }) => number === item)?.name ?? '';
      return `Crew ${crew + offset} goes without ${count} × ${item} ${name}: no more are free on these dates. Agree before the hire who brings them, or hire on other dates.`;
    }),
  );
}
