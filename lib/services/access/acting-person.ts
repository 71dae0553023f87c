/*
 * Who acts, as records keep it: an id that stays, and the name as it was.
 * Invariant: two people never share an id; the house itself is `system`.
 * Not here: signing in.
 * Read next: ../context.ts.
 */
import type { Context } from '#lib/services/context.ts';

export interface ActingPerson {
  readonly id: string;
  readonly name: string;
}

export function actingPerson({ actor }: Context): ActingPerson {
  return { id: actor.id, name: actor.name };
}
