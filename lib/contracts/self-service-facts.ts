/*
 * Where self-service ends and how long it holds, as the house decides it.
 * Invariant: every figure has what it was before the house said anything, so that a house file without them is whole.
 * Not here: what a stranger may send (self-service.ts).
 * Read next: house.ts, ../questions/hand-over.ts.
 */
import { z } from 'zod';

/** All figures are house practice, no source: above these a person who knows valves looks first. */
export const selfServiceFactsSchema = z
  .strictObject({
    /** Hire and all charges without tax, in whole units of the house's currency. */
    value_limit: z.number().min(0).max(10_000_000).default(10_000),
    /** Starting torque above which what the valve must never see has to be known and not guessed. */
    guessed_ceiling_nm: z.number().min(0).max(100_000).default(400),
    /** A range of the starting torque as wide as this, high over low … */
    widest_ratio: z.number().min(1).max(1000).default(20),
    /** … matters only where its high end is above this. */
    wide_above_nm: z.number().min(0).max(100_000).default(300),
    /** How long what was ordered is held until somebody confirms it. */
    hold_hours: z.int().min(1).max(1000).default(120),
    /** Hour (UTC) of the day before the hire until which an order may be cancelled: the yard picks in the afternoon. */
    cancel_until_hour: z.int().min(0).max(23).default(12),
    /** A draft that nobody touched for a month is out of date anyway: dates and rates have moved. */
    link_days: z.int().min(1).max(365).default(30),
    /** Charges are settled and papers asked for again within two months of the return. */
    link_days_after_hire: z.int().min(0).max(730).default(60),
    /** Drafts that were never sent are thrown away this long after their last link ended. */
    draft_days: z.int().min(0).max(365).default(14),
  })
  .prefault({});

export type SelfServiceFacts = z.output<typeof selfServiceFactsSchema>;
export const SELF_SERVICE_FACTS: SelfServiceFacts = selfServiceFactsSchema.parse(undefined);
