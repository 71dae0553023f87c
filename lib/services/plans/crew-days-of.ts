/*
 * The planned days of a plan's crews as screens and papers show them, with the heaviest case of each crew.
 * Invariant: crews are counted from 1; a plan that was kept before days were planned has none.
 * Not here: planning the days (../../planning/crew-days.ts) and their words (../../documents/words/crew-day-words.ts).
 * Read next: ../quotes/papers-of.ts, plan-view.ts.
 */
import type { HouseFacts } from '#lib/contracts/house.ts';
import type { CrewDaysInput } from '#lib/documents/papers/paper-inputs.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { PlanOutcome } from '#lib/planning/worked-out.ts';
import { crewOffset } from './crew-numbers.ts';
import { packKit } from './pack-kit.ts';

export function crewDaysOf({
  outcome,
  models,
  house,
  site,
}: {
  readonly outcome: Pick<PlanOutcome, 'kits' | 'crewDays'>;
  readonly models: readonly Model[];
  readonly house: Pick<HouseFacts, 'liftLimit'>;
  readonly site: Pick<Site, 'transport'>;
}): readonly CrewDaysInput[] {
  return outcome.kits.flatMap(({ crew, items }) => {
    const days = (outcome.crewDays ?? []).filter((day) => day.crew === crew);
    if (days.length === 0) return [];
    const { liftLimit } = house;
    const { cases } = packKit({ items, models, liftLimit, transport: site.transport, nextSerial: () => null });
    const [heaviest] = cases.toSorted((a, b) => b.mass - a.mass);
    return [
      {
        crew: crew + crewOffset(outcome),
        days,
        heaviestCase: heaviest === undefined ? null : { mass_kg: heaviest.mass, lift: heaviest.lift.mark },
      },
    ];
  });
}
