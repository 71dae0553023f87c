/*
 * Couplings in catalogue files.
 * Invariant: the size belongs to the form; a size that the house does not have is refused.
 * Not here: what joins what (lib/equipment/coupling.ts).
 * Read next: equipment-parts.ts.
 */
import { z } from 'zod';
import { COUPLING_SIZES, type Coupling } from '#lib/equipment/coupling.ts';

const gender = z.enum(['male', 'female']);

export const couplingSchema = z.discriminatedUnion('form', [
  z.strictObject({ form: z.literal('square'), size: z.enum(COUPLING_SIZES.square), gender }),
  z.strictObject({ form: z.literal('spline'), size: z.enum(COUPLING_SIZES.spline), gender }),
  z.strictObject({ form: z.literal('face'), size: z.enum(COUPLING_SIZES.face), gender }),
]);

/** Parsed again on the way out, so that what is written can be read. */
export function couplingToJson(coupling: Coupling): z.input<typeof couplingSchema> {
  return couplingSchema.parse(coupling);
}
