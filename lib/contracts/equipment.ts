/*
 * Equipment in catalogue files: JSON with the unit at the end of each key, read into models and written back.
 * Invariant: a catalogue is taken whole or not at all; every error names the model's number and the field.
 * Not here: units with serial numbers (stock) and whether a catalogue is coherent (tests of seeds).
 * Read next: equipment-drive.ts, equipment-parts.ts, equipment-supports.ts.
 */
import { z } from 'zod';
import type { Model } from '#lib/equipment/model.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { toMinor } from '#lib/money/money.ts';
import { kilograms, millimetres, wattHours } from '#lib/units/quantity.ts';
import { driveFactsSchema, driveFactsToJson } from './equipment-drive.ts';
import {
  adapterFactsSchema,
  adapterFactsToJson,
  extensionFactsSchema,
  extensionFactsToJson,
  headFactsSchema,
  headFactsToJson,
} from './equipment-parts.ts';
import { positive, text, toMillimetres } from './equipment-quantity.ts';
import {
  accessoryFactsSchema,
  accessoryFactsToJson,
  optionFactsSchema,
  optionFactsToJson,
  restraintFactsSchema,
  restraintFactsToJson,
} from './equipment-supports.ts';

const minor = z.int().nonnegative();

const base = {
  number: text.regex(/^[A-Z]{1,2}-\d{3,4}$/, 'is not of the form D-123'),
  name: text,
  /** The name on German papers and screens; the English one stands in where it is missing. */
  name_de: text.optional(),
  mass_kg: positive,
  case: z.strictObject({ length_mm: positive, width_mm: positive, height_mm: positive }),
  rates: z.strictObject({
    day_minor: minor,
    week_minor: minor,
    four_weeks_minor: minor,
    minimum_days: z.int().min(1),
  }),
  replacement_minor: minor,
  counted: z.boolean(),
  made_to_order: z.boolean(),
  marking: text.nullable(),
  lithium: z.strictObject({ energy_wh: positive, packs: z.int().min(1) }).optional(),
};

export const modelSchema = z
  .discriminatedUnion('role', [
    z.strictObject({ role: z.literal('drive'), ...base, facts: driveFactsSchema }),
    z.strictObject({ role: z.literal('head'), ...base, facts: headFactsSchema }),
    z.strictObject({ role: z.literal('adapter'), ...base, facts: adapterFactsSchema }),
    z.strictObject({ role: z.literal('extension'), ...base, facts: extensionFactsSchema }),
    z.strictObject({ role: z.literal('restraint'), ...base, facts: restraintFactsSchema }),
    z.strictObject({ role: z.literal('option'), ...base, facts: optionFactsSchema }),
    z.strictObject({ role: z.literal('accessory'), ...base, facts: accessoryFactsSchema }),
  ])
  .transform((model): Model => {
    const common = readBase(model);
    switch (model.role) {
      case 'drive':
        return { ...common, role: model.role, facts: model.facts };
      case 'head':
        return { ...common, role: model.role, facts: model.facts };
      case 'adapter':
        return { ...common, role: model.role, facts: model.facts };
      case 'extension':
        return { ...common, role: model.role, facts: model.facts };
      case 'restraint':
        return { ...common, role: model.role, facts: model.facts };
      case 'option':
        return { ...common, role: model.role, facts: model.facts };
      case 'accessory':
        return { ...common, role: model.role, facts: model.facts };
    }
  });

export type ModelJson = z.input<typeof modelSchema>;

export function parseModels(json: unknown): Result<readonly Model[]> {
  const parsed = z.array(modelSchema).safeParse(json);
  if (!parsed.success) {
    const sentence = parsed.error.issues.map((issue) => tellIssue({ json, issue })).join(' ');
    return failed({ code: 'equipment-unreadable', sentence });
  }
  const twice = firstRepeated(parsed.data.map((model) => model.number));
  if (twice !== undefined) {
    return failed({ code: 'equipment-number-twice', sentence: `${twice}, number: is used by more than one model.` });
  }
  return ok(parsed.data);
}

export function modelToJson(model: Model): ModelJson {
  const common = writeBase(model);
  switch (model.role) {
    case 'drive':
      return { role: model.role, ...common, facts: driveFactsToJson(model.facts) };
    case 'head':
      return { role: model.role, ...common, facts: headFactsToJson(model.facts) };
    case 'adapter':
      return { role: model.role, ...common, facts: adapterFactsToJson(model.facts) };
    case 'extension':
      return { role: model.role, ...common, facts: extensionFactsToJson(model.facts) };
    case 'restraint':
      return { role: model.role, ...common, facts: restraintFactsToJson(model.facts) };
    case 'option':
      return { role: model.role, ...common, facts: optionFactsToJson(model.facts) };
    case 'accessory':
      return { role: model.role, ...common, facts: accessoryFactsToJson(model.facts) };
  }
}

const baseSchema = z.object(base);

function readBase(model: z.infer<typeof baseSchema>): Omit<Model, 'role' | 'facts'> {
  return {
    number: model.number,
    name: model.name,
    ...(model.name_de === undefined ? {} : { germanName: model.name_de }),
    mass: kilograms(model.mass_kg),
    case: {
      length: millimetres(model.case.length_mm),
      width: millimetres(model.case.width_mm),
      height: millimetres(model.case.height_mm),
    },
    rates: {
      day_minor: toMinor(model.rates.day_minor),
      week_minor: toMinor(model.rates.week_minor),
      four_weeks_minor: toMinor(model.rates.four_weeks_minor),
      minimum_days: model.rates.minimum_days,
    },
    replacement_minor: toMinor(model.replacement_minor),
    counted: model.counted,
    madeToOrder: model.made_to_order,
    marking: model.marking,
    ...(model.lithium === undefined
      ? {}
      : { lithium: { energy: wattHours(model.lithium.energy_wh), packs: model.lithium.packs } }),
  };
}

function writeBase(model: Model): z.input<typeof baseSchema> {
  return {
    number: model.number,
    name: model.name,
    ...(model.germanName === undefined ? {} : { name_de: model.germanName }),
    mass_kg: model.mass,
    case: {
      length_mm: toMillimetres(model.case.length),
      width_mm: toMillimetres(model.case.width),
      height_mm: toMillimetres(model.case.height),
    },
    rates: { ...model.rates },
    replacement_minor: model.replacement_minor,
    counted: model.counted,
    made_to_order: model.madeToOrder,
    marking: model.marking,
    ...(model.lithium === undefined
      ? {}
      : { lithium: { energy_wh: model.lithium.energy, packs: model.lithium.packs } }),
  };
}

function tellIssue(about: { readonly json: unknown; readonly issue: z.core.$ZodIssue }): string {
  const [index, ...path] = about.issue.path;
  if (index === undefined) return `The catalogue ${about.issue.message}.`;
  return `${nameAt({ json: about.json, index })}, ${path.length === 0 ? 'the model' : tellPath(path)}: ${about.issue.message}.`;
}

function nameAt(at: { readonly json: unknown; readonly index: PropertyKey }): string {
  const named = z.array(z.unknown()).safeParse(at.json);
  const entry = z.object({ number: z.string() }).safeParse(named.success ? named.data[Number(at.index)] : undefined);
  return entry.success ? entry.data.number : `Entry ${Number(at.index) + 1}`;
}

function tellPath(path: readonly PropertyKey[]): string {
  return path
    .map((part) => (typeof part === 'number' ? `[${part}]` : `.${String(part)}`))
    .join('')
    .replace(/^\./, '');
}

function firstRepeated(values: readonly string[]): string | undefined {
  const seen = new Set<string>();
  for (const value of values) {
    if (seen.has(value)) return value;
    seen.add(value);
  }
  return undefined;
}
