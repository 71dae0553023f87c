/*
 * The catalogue of a role as CSV and back: shown row by row before it is taken, and taken whole or not at all.
 * Invariant: a file that was saved here and is read again changes nothing; models that a file does not name stay as they are.
 * Not here: rates after the first (rates-csv.ts) and single models (save-model.ts).
 * Read next: ../csv-table.ts, ../../contracts/equipment-flat.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { listModels, type ModelRow } from '#db/queries/equipment.ts';
import type { ModelJson } from '#lib/contracts/equipment.ts';
import { columnName, fieldsOf } from '#lib/contracts/equipment-fields.ts';
import { type FlatModel, flatOf, readFlat } from '#lib/contracts/equipment-flat.ts';
import type { Role } from '#lib/equipment/model.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import {
  type CsvTable,
  checkColumns,
  type ImportPreview,
  type ImportRow,
  NOTHING_REFUSED_FIRST,
  readCsv,
  SEEN_BEFORE,
  writeCsv,
} from '#lib/services/csv-table.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { sha256 } from '#lib/services/sha256.ts';
import { addModelState, changeModelState, jsonOf, stateOf } from './model-record.ts';
import { whatMayNotChange } from './save-model.ts';

export function exportCatalogue(context: Context, role: Role): Result<string> {
  const allowed = authorise(context, 'read equipment');
  if (!allowed.ok) return allowed;
  const { currency } = houseFacts(context).pricing;
  const models = rowsOf(context.database.db, role).filter(({ retired_on }) => retired_on === null);
  return ok(writeModels(models.map(jsonOf), { role, currency }));
}

interface Kind {
  readonly role: Role;
  readonly currency: string;
}

export function writeModels(models: readonly ModelJson[], { role, currency }: Kind): string {
  const fields = fieldsOf(role, currency);
  return writeCsv({
    columns: fields.map(columnName),
    rows: models.map((json) => {
      const flat = flatOf(json, currency);
      return fields.map(({ path }) => flat[path] ?? '');
    }),
  });
}

export interface CatalogueFile {
  readonly role: Role;
  readonly text: string;
}

export function previewCatalogue(context: Context, file: CatalogueFile): Result<ImportPreview> {
  const read = readModels(context, file);
  if (!read.ok) return read;
  return ok({ rows: read.value.map(({ shown }) => shown), seen: seenOf(context.database.db, file.role) });
}

export function takeCatalogue(
  context: Context,
  { seen, ...file }: CatalogueFile & { readonly seen: string },
): Result<{ readonly added: number; readonly changed: number }> {
  const allowed = authorise(context, 'change equipment');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx): Result<{ readonly added: number; readonly changed: number }> => {
      if (seenOf(tx, file.role) !== seen) return failed(SEEN_BEFORE);
      const read = readModels(context, file);
      if (!read.ok) return read;
      if (read.value.some(({ shown }) => shown.kind === 'refused')) return failed(NOTHING_REFUSED_FIRST);
      for (const row of read.value) writeRow(tx, context, row);
      const count = (kind: ImportRow['kind']) => read.value.filter(({ shown }) => shown.kind === kind).length;
      return ok({ added: count('added'), changed: count('changed') });
    },
    { behavior: 'immediate' },
  );
}

interface ReadRow {
  readonly shown: ImportRow;
  readonly json: ModelJson | null;
  readonly there: ModelRow | undefined;
}

function writeRow(tx: DbOrTx, context: Context, { shown, json, there }: ReadRow): void {
  if (json === null || shown.kind === 'same' || shown.kind === 'refused') return;
  if (there === undefined) addModelState(tx, context, { json, retired_on: null });
  else {
    const after = { ...stateOf(there), json };
    changeModelState(tx, context, { row: there, version: there.version, after, action: 'model changed by a file' });
  }
}

function rowsOf(db: DbOrTx, role: Role): readonly ModelRow[] {
  return listModels(db).filter((row) => row.role === role);
}

/** Any number may be used in another role, so all models count. */
function seenOf(db: DbOrTx, role: Role): string {
  return sha256(
    `${role} ${listModels(db)
      .map(({ number, version }) => `${number}.${version}`)
      .join(' ')}`,
  );
}

function readModels(context: Context, { role, text }: CatalogueFile): Result<readonly ReadRow[]> {
  const allowed = authorise(context, 'read equipment');
  if (!allowed.ok) return allowed;
  const { currency } = houseFacts(context).pricing;
  const table = readCsv(text);
  if (!table.ok) return table;
  const fields = fieldsOf(role, currency);
  const known = checkColumns(table.value, fields.map(columnName));
  if (!known.ok) return known;
  const there = new Map(listModels(context.database.db).map((row) => [row.number, row]));
  const flats = flatRows(table.value, { role, currency });
  const numbers = flats.map((flat) => flat.number ?? '');
  return ok(
    flats.map((flat, index) =>
      judgeRow(flat, {
        row: table.value.numbers[index] ?? 0,
        kind: { role, currency },
        there: there.get(flat.number ?? ''),
        isTwice: numbers.indexOf(flat.number ?? '') < index,
      }),
    ),
  );
}

function flatRows(table: CsvTable, { role, currency }: Kind): readonly FlatModel[] {
  const paths = new Map(fieldsOf(role, currency).map((field) => [columnName(field), field.path]));
  return table.rows.map((row) =>
    Object.fromEntries(table.columns.map((column, index) => [paths.get(column) ?? '', (row[index] ?? '').trim()])),
  );
}

interface Judging {
  readonly row: number;
  readonly kind: Kind;
  readonly there: ModelRow | undefined;
  readonly isTwice: boolean;
}

function judgeRow(flat: FlatModel, { row, kind, there, isTwice }: Judging): ReadRow {
  const name = flat.number ?? '';
  const fields = fieldsOf(kind.role, kind.currency);
  const columnOf = (path: string) => fields.filter((field) => field.path === path).map(columnName)[0] ?? 'number';
  const refuse = (problems: readonly { readonly path: string; readonly sentence: string }[]): ReadRow => ({
    shown: {
      row,
      name,
      kind: 'refused',
      differences: [],
      problems: problems.map(({ path, sentence }) => ({ column: columnOf(path), sentence })),
    },
    json: null,
    there,
  });
  if (isTwice)
    return refuse([
      { path: 'number', sentence: `Number ${name} stands in this file twice: take one of the rows out.` },
    ]);
  if (there !== undefined && there.role !== kind.role)
    return refuse([
      { path: 'number', sentence: `Number ${name} is a model of role ${there.role}: give this one another number.` },
    ]);
  if (there !== undefined && there.retired_on !== null)
    return refuse([
      {
        path: 'number',
        sentence: `${name} was retired on ${there.retired_on}: bring it back first, or take the row out.`,
      },
    ]);
  const read = readFlat(flat, kind);
  if (!read.ok) return refuse(read.problems);
  const before = there === undefined ? null : jsonOf(there);
  const fixed = before === null ? null : whatMayNotChange(before, read.json);
  if (fixed !== null) return refuse([fixed]);
  const own = flatOf(read.json, kind.currency);
  const old = before === null ? {} : flatOf(before, kind.currency);
  const differences = fields
    .map((field) => ({ column: columnName(field), before: old[field.path] ?? '', after: own[field.path] ?? '' }))
    .filter((difference) => difference.before !== difference.after);
  const outcome = before === null ? 'added' : differences.length === 0 ? 'same' : 'changed';
  return {
    shown: { row, name, kind: outcome, differences: before === null ? [] : differences, problems: [] },
    json: read.json,
    there,
  };
}
