/*
 * Checks what a plan comes to for people: the assemblies its work names, what each line gets, what each crew carries, and its days.
 * Invariant: everything is worked out again from lines, choices, models, site and stock; an empty answer means that nothing was found wrong.
 * Not here: the fleet plan underneath (check-plan.ts) and the assemblies themselves (check-assembly.ts).
 * Read next: check-work.ts, check-share-out.ts, check-crew-kits.ts, check-crew-days.ts.
 */
import { checkCrewDays } from './check-crew-days.ts';
import { checkCrewKits } from './check-crew-kits.ts';
import { checkShareOut } from './check-share-out.ts';
import { checkWork } from './check-work.ts';
import type { Discrepancy } from './discrepancy.ts';
import type { OutcomeFacts } from './outcome-facts.ts';

export function checkOutcome(facts: OutcomeFacts): readonly Discrepancy[] {
  return [...checkWork(facts), ...checkShareOut(facts), ...checkCrewKits(facts), ...checkCrewDays(facts)];
}
