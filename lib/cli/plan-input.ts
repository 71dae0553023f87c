/*
 * What a list, a site and the house's stock come to as a request for plans.
 * Invariant: every command asks for plans of the same input, so that their answers can be compared.
 * Not here: reading lists and sites (read-input.ts).
 * Read next: ../planning/work-out.ts.
 */
import { NO_CONSTRAINTS } from '#lib/contracts/constraints.ts';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import { uniqueTags } from '#lib/planning/unique-tags.ts';
import type { WorkOutInput } from '#lib/planning/worked-out.ts';
import { freePieces, houseFacts, houseModels } from '#lib/services/house/house-facts.ts';
import type { CommandInput } from './read-input.ts';

export function planInput({ context, taken, site }: CommandInput): WorkOutInput {
  return {
    lines: uniqueTags(taken.lines),
    site,
    models: houseModels(context, site.startsOn),
    free: freePieces(context, { window: rangeOfDays(site.startsOn, site.days) }),
    labour_minor_per_hour: houseFacts(context, site.startsOn).labourMinorPerHour,
    preferences: ['cost', 'pieces', 'time', 'surest'],
    constraints: NO_CONSTRAINTS,
    budget: { seconds: 40, nodes: 20_000 },
  };
}
