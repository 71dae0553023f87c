/*
 * Bodies of requests that change equipment, rates, house and rules.
 * Invariant: every text and list has a limit; what a field means is judged by the services.
 * Not here: the fields of a model (equipment-fields.ts) and the house (house.ts).
 * Read next: ../services/equipment/save-model.ts.
 */
import { z } from 'zod';
import { ROLES } from '#lib/equipment/model.ts';
import { LIMITS } from '#lib/kernel/limits.ts';

const version = z.int().min(0);
const number = z.string().trim().max(12);
const day = z.string().trim().max(20);
const amount = z.int().min(0).max(1e11);
export const roleSchema = z.enum(ROLES);
const fields = z.record(z.string().max(60), z.string().max(LIMITS.cell_characters));
const csv = z.string().max(LIMITS.list_bytes + 1);

export const saveModelSchema = z.strictObject({
  role: roleSchema,
  fields,
  existing: z.strictObject({ number, version }).optional(),
});

export const modelActSchema = z.strictObject({ act: z.enum(['retire', 'bring back', 'undo']), version });

export const rateCardSchema = z.strictObject({
  starts_on: day,
  day_minor: amount,
  week_minor: amount,
  four_weeks_minor: amount,
  minimum_days: z.int().min(1).max(60),
  note: z.string().trim().max(200),
});

/** Without `seen` the file is only looked at; with it, it is taken. */
export const csvFileSchema = z.strictObject({ text: csv, seen: z.string().max(80).optional() });

export const raiseSchema = z.strictObject({
  role: roleSchema.optional(),
  percent: z.number().min(-50).max(200),
  step_minor: z.int().min(1).max(1_000_000),
  starts_on: day,
  take: z.literal(true).optional(),
});

export const houseSaveSchema = z.discriminatedUnion('part', [
  z.strictObject({ part: z.literal('standing'), version, standing: z.unknown() }),
  z.strictObject({ part: z.literal('rules'), version, rules: z.unknown() }),
  z.strictObject({ part: z.literal('prices'), starts_on: day, note: z.string().trim().max(200), held: z.unknown() }),
]);

export const trialSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('rules'), rules: z.unknown() }),
  z.strictObject({ kind: z.literal('retire'), number }),
  z.strictObject({ kind: z.literal('model'), role: roleSchema, fields }),
]);
