/*
 * A whole model as one text a field, and back into catalogue JSON that its schema has accepted.
 * Invariant: a model that was written so reads back as the same model; every problem names its field and what to do.
 * Not here: single fields (field-text.ts) and files of many models (lib/services/equipment/catalogue-csv.ts).
 * Read next: equipment-fields.ts.
 */
import type { z } from 'zod';
import type { Role } from '#lib/equipment/model.ts';
import { type ModelJson, modelSchema, modelToJson } from './equipment.ts';
import type { EquipmentField } from './equipment-field.ts';
import { fieldsOf } from './equipment-fields.ts';
import { readField, writeField } from './field-text.ts';

/** Text of each field by its path; absent is empty. */
export type FlatModel = Readonly<Record<string, string>>;

export interface FieldProblem {
  readonly path: string;
  readonly label: string;
  readonly sentence: string;
}

export type ReadModel =
  | { readonly ok: true; readonly json: ModelJson }
  | { readonly ok: false; readonly problems: readonly FieldProblem[] };

interface Kind {
  readonly role: Role;
  readonly currency: string;
}

export function flatOf(json: ModelJson, currency: string): FlatModel {
  return Object.fromEntries(
    fieldsOf(json.role, currency).map((field) => [field.path, writeField(field, valueAt(json, field.path))]),
  );
}

export function readFlat(flat: FlatModel, { role, currency }: Kind): ReadModel {
  const fields = fieldsOf(role, currency);
  const problems: FieldProblem[] = [];
  const tree: Tree = { role, marking: null, facts: {} };
  for (const field of fields) {
    const text = (flat[field.path] ?? '').trim();
    if (text === '') continue;
    const mismatch = outOfPlace(field, { flat, fields });
    const read = readField(field, text);
    if (mismatch !== null) problems.push(problemOf(field, mismatch));
    else if (read.ok) plant(tree, field.path.split('.'), read.value);
    else problems.push(problemOf(field, read.reason.sentence));
  }
  complete(tree, role);
  const parsed = modelSchema.safeParse(tree);
  if (!parsed.success && problems.length === 0)
    return { ok: false, problems: parsed.error.issues.map((issue) => tellIssue(issue, fields)) };
  if (!parsed.success || problems.length > 0) {
    const missing = parsed.success
      ? []
      : parsed.error.issues.map((issue) => tellIssue(issue, fields)).filter(({ path }) => !(flat[path] ?? '').trim());
    return { ok: false, problems: [...problems, ...missing] };
  }
  return { ok: true, json: modelToJson(parsed.data) };
}

/** A field of another power source or kind is to be left empty. */
function outOfPlace(
  field: EquipmentField,
  { flat, fields }: { readonly flat: FlatModel; readonly fields: readonly EquipmentField[] },
): string | null {
  if (field.when === null) return null;
  const said = (flat[field.when.path] ?? '').trim();
  if (field.when.values.includes(said)) return null;
  const asked = fields.find(({ path }) => path === field.when?.path)?.label ?? 'the kind';
  return `belongs to ${asked} ${field.when.values.join(' or ')}: leave it empty where ${asked} is ${said || 'not given'}`;
}

type Tree = { [key: string]: unknown };

function valueAt(json: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>((at, key) => (typeof at === 'object' && at !== null ? Reflect.get(at, key) : undefined), json);
}

/** Puts a value into the tree, growing objects on the way; places of a list become keys 0, 1, … until they are gathered. */
function plant(tree: Tree, [key = '', ...rest]: readonly string[], value: unknown): void {
  if (rest.length === 0) {
    tree[key] = value;
    return;
  }
  const below: Tree = isTree(tree[key]) ? tree[key] : {};
  tree[key] = below;
  plant(below, rest, value);
}

function isTree(value: unknown): value is Tree {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** What an empty field means where the catalogue wants a word for nothing. */
function complete(tree: Tree, role: Role): void {
  const facts: Tree = isTree(tree.facts) ? tree.facts : {};
  tree.facts = facts;
  if (role === 'drive') {
    facts.gears = isTree(facts.gears) ? Object.values(facts.gears) : [];
    facts.limiter ??= null;
  }
  if (role === 'accessory') facts.fits ??= [];
}

function problemOf({ path, label }: Pick<EquipmentField, 'path' | 'label'>, sentence: string): FieldProblem {
  return { path, label, sentence: `${label.charAt(0).toUpperCase()}${label.slice(1)} ${sentence}.` };
}

function tellIssue(issue: z.core.$ZodIssue, fields: readonly EquipmentField[]): FieldProblem {
  const path = issue.path.join('.');
  const field =
    fields.find((one) => one.path === path) ?? fields.find((one) => one.path.startsWith(`${path}.`)) ?? null;
  const isMissing = issue.code === 'invalid_type' || issue.code === 'invalid_union' || issue.code === 'invalid_value';
  const sentence = isMissing ? 'is missing' : issue.message;
  return problemOf(field ?? { path, label: path.replaceAll('_', ' ') || 'the model' }, sentence);
}
