/*
 * The choices a person lays on a plan: parts locked in, parts left out, lines pinned to a part.
 * Invariant: unknown keys are dropped, missing ones are empty.
 * Not here: what a choice does to the search (lib/kits).
 * Read next: site.ts.
 */
import { z } from 'zod';

const constraintsSchema = z.object({
  locked_parts: z.array(z.string().max(40)).max(200).default([]),
  excluded_parts: z.array(z.string().max(40)).max(200).default([]),
  pins: z
    .array(z.object({ tag: z.string().max(200), part: z.string().max(40) }))
    .max(20_000)
    .default([]),
});

export interface PlanConstraints {
  readonly lockedParts: readonly string[];
  readonly excludedParts: readonly string[];
  readonly pins: readonly { readonly tag: string; readonly part: string }[];
}

export const NO_CONSTRAINTS: PlanConstraints = { lockedParts: [], excludedParts: [], pins: [] };

export function parseConstraints(json: unknown): PlanConstraints {
  const parsed = constraintsSchema.safeParse(json);
  if (!parsed.success) return NO_CONSTRAINTS;
  const { locked_parts, excluded_parts, pins } = parsed.data;
  return { lockedParts: locked_parts, excludedParts: excluded_parts, pins };
}

export function constraintsToJson(constraints: PlanConstraints): unknown {
  return {
    locked_parts: constraints.lockedParts,
    excluded_parts: constraints.excludedParts,
    pins: constraints.pins,
  };
}
