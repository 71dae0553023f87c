/*
 * Adds a model or changes one, field by field, and says whether the catalogue still hangs together.
 * Invariant: number, role and whether it is counted never change; rates of a model that is there change on dated cards only; issued quotes keep what they were worked from.
 * Not here: retiring (retire-model.ts) and whole files (import-catalogue.ts).
 * Read next: ../../contracts/equipment-flat.ts, ../../equipment/coherence.ts.
 */
import { findModel } from '#db/queries/equipment.ts';
import type { ModelJson } from '#lib/contracts/equipment.ts';
import { type FieldProblem, type FlatModel, readFlat } from '#lib/contracts/equipment-flat.ts';
import { checkCoherence } from '#lib/equipment/coherence.ts';
import type { Role } from '#lib/equipment/model.ts';
import { type Failed, failed, ok, type Refused, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts, houseModels } from '#lib/services/house/house-facts.ts';
import { addModelState, CHANGED_MEANWHILE, changeModelState, NO_SUCH_MODEL, stateOf } from './model-record.ts';

export interface ModelToSave {
  readonly role: Role;
  readonly fields: FlatModel;
  /** Of a model that is there; absent adds one. */
  readonly existing?: { readonly number: string; readonly version: number } | undefined;
}

export interface SavedModel {
  readonly number: string;
  readonly version: number;
  /** What does not hang together around this model. */
  readonly warnings: readonly string[];
}

export interface RefusedModel extends Refused {
  readonly problems: readonly FieldProblem[];
}

export function saveModel(context: Context, input: ModelToSave): Result<SavedModel, RefusedModel> {
  const allowed = authorise(context, 'change equipment');
  if (!allowed.ok) return withoutProblems(allowed);
  const { currency } = houseFacts(context).pricing;
  const read = readFlat(input.fields, { role: input.role, currency });
  if (!read.ok) return invalid(read.problems);
  const saved = context.database.db.transaction(
    (tx) => (input.existing === undefined ? add(tx, context, read.json) : change(tx, context, read.json, input)),
    { behavior: 'immediate' },
  );
  if (!saved.ok) return saved;
  return ok({ ...saved.value, warnings: warningsAbout(context, read.json.number) });
}

type Tx = Parameters<typeof addModelState>[0];

function add(
  tx: Tx,
  context: Context,
  ...[json]: readonly [ModelJson]
): Result<Omit<SavedModel, 'warnings'>, RefusedModel> {
  if (findModel(tx, json.number) !== undefined) {
    const sentence = `Number ${json.number} is taken: choose another, or open that model and change it.`;
    return invalid([{ path: 'number', label: 'number', sentence }]);
  }
  addModelState(tx, context, { json, retired_on: null });
  return ok({ number: json.number, version: 1 });
}

function change(
  tx: Tx,
  context: Context,
  ...[json, input]: readonly [ModelJson, ModelToSave]
): Result<Omit<SavedModel, 'warnings'>, RefusedModel> {
  const { number = '', version = 0 } = input.existing ?? {};
  const row = findModel(tx, number);
  if (row === undefined) return withoutProblems(NO_SUCH_MODEL(number));
  const before = stateOf(row);
  const fixed = whatMayNotChange(before.json, json);
  if (fixed !== null) return invalid([fixed]);
  const done = changeModelState(tx, context, {
    row,
    version,
    after: { json, retired_on: row.retired_on },
    action: 'model changed',
  });
  return done ? ok({ number, version: version + 1 }) : failed({ ...CHANGED_MEANWHILE, problems: [] });
}

export function whatMayNotChange(before: ModelJson, after: ModelJson): FieldProblem | null {
  if (before.number !== after.number || before.role !== after.role)
    return {
      path: 'number',
      label: 'number',
      sentence: `Number ${before.number} and its role stay as they are: copy it as a new model instead.`,
    };
  if (before.counted !== after.counted)
    return {
      path: 'counted',
      label: 'counted',
      sentence: `Whether ${before.number} is held by number or by serial number stays as it is, because its pieces are on record that way: copy it as a new model instead.`,
    };
  if (JSON.stringify(before.rates) !== JSON.stringify(after.rates))
    return {
      path: 'rates.day_minor',
      label: 'day rate',
      sentence:
        'Rates of a model that is there change on a card with the day from which they hold: put one on under Rates.',
    };
  return null;
}

/** Warnings of the catalogue that name a model. */
export function warningsAbout(context: Context, number: string): readonly string[] {
  return checkCoherence(houseModels(context))
    .filter((warning) => warning.number === number || warning.sentence.includes(number))
    .map(({ sentence }) => sentence);
}

function invalid(problems: readonly FieldProblem[]): Failed<RefusedModel> {
  const [first] = problems;
  const more = problems.length > 1 ? ` ${problems.length - 1} more to put right are marked.` : '';
  return failed({
    code: 'model-invalid',
    sentence: `${first?.sentence ?? 'The model cannot be read.'}${more}`,
    problems,
  });
}

function withoutProblems({ reason }: Failed<Refused>): Failed<RefusedModel> {
  return failed({ ...reason, problems: [] });
}
