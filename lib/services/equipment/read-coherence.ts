/*
 * What does not hang together in the catalogue as it stands.
 * Invariant: reads only; an empty list means that nothing was found, not that the equipment is safe.
 * Not here: the checks (lib/equipment/coherence.ts).
 * Read next: ../../equipment/coherence.ts.
 */
import { checkCoherence } from '#lib/equipment/coherence.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseModels } from '#lib/services/house/house-facts.ts';

export interface Coherence {
  readonly warnings: readonly string[];
  readonly mayChange: boolean;
}

export function readCoherence(context: Context): Result<Coherence> {
  const allowed = authorise(context, 'read equipment');
  if (!allowed.ok) return allowed;
  const warnings = checkCoherence(houseModels(context)).map(({ sentence }) => sentence);
  return ok({ warnings, mayChange: authorise(context, 'change equipment').ok });
}
