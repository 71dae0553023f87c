/*
 * What the house decides of self-service: where it ends, and how long it holds.
 * Invariant: read anew each time, so that a change of the house counts at once.
 * Not here: changing them (../house/house-record.ts).
 * Read next: ../../contracts/self-service-facts.ts.
 */
import { SELF_SERVICE_FACTS, type SelfServiceFacts } from '#lib/contracts/self-service-facts.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';

export function selfServiceFacts(context: Context): SelfServiceFacts {
  return houseFacts(context).selfService ?? SELF_SERVICE_FACTS;
}
