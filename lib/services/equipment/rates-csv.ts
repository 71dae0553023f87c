/*
 * Rate cards of all models as CSV and back: shown row by row before they are taken, and taken whole or not at all.
 * Invariant: a file that was saved here and is read again changes nothing; a card that has begun cannot be changed by a file.
 * Not here: single cards (rate-cards.ts).
 * Read next: ../csv-table.ts.
 */
import { listModels } from '#db/queries/equipment.ts';
import { listRateCards, type RateCardRow } from '#db/queries/rates.ts';
import { type EquipmentField, fieldGroup } from '#lib/contracts/equipment-field.ts';
import { columnName } from '#lib/contracts/equipment-fields.ts';
import { readField, writeField } from '#lib/contracts/field-text.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import {
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
import { jsonOf } from './model-record.ts';
import { putRateCards, type RateCardInput, wrongDay } from './rate-cards.ts';

type Card = Omit<RateCardRow, 'id'>;

function columnsOf(currency: string): readonly EquipmentField[] {
  const card = fieldGroup('Card');
  const amount = { unit: currency, range: [0, 1e9] as const };
  return [
    card.text(['model_number', 'number', 'House number of the model.']),
    card.text(['starts_on', 'from', 'The day from which the card holds; empty for the rates to begin with.'], {
      optional: true,
    }),
    card.number(['day_minor', 'day rate', 'Net.'], amount),
    card.number(['week_minor', 'week rate', 'Net.'], amount),
    card.number(['four_weeks_minor', 'four-week rate', 'Net.'], amount),
    card.count(['minimum_days', 'minimum days', 'A shorter hire is charged as this many.'], { range: [1, 60] }),
    card.text(['note', 'note', 'Why.'], { optional: true }),
  ];
}

export function exportRates(context: Context): Result<string> {
  const allowed = authorise(context, 'read equipment');
  if (!allowed.ok) return allowed;
  const fields = columnsOf(houseFacts(context).pricing.currency);
  const rows = allCards(context).map((card) => fields.map((field) => writeField(field, Reflect.get(card, field.path))));
  return ok(writeCsv({ columns: fields.map(columnName), rows }));
}

/** Every card, the rates that a model began with first and without a day. */
function allCards(context: Context): readonly Card[] {
  const { db } = context.database;
  const cards = listRateCards(db);
  return listModels(db).flatMap((row): readonly Card[] => [
    { model_number: row.number, starts_on: '', note: '', ...jsonOf(row).rates },
    ...cards.filter(({ model_number }) => model_number === row.number),
  ]);
}

export function previewRates(context: Context, text: string): Result<ImportPreview> {
  const read = readRows(context, text);
  if (!read.ok) return read;
  return ok({ rows: read.value.map(({ shown }) => shown), seen: seenOf(context) });
}

export function takeRates(
  context: Context,
  { text, seen }: { readonly text: string; readonly seen: string },
): Result<{ readonly put: number }> {
  if (seenOf(context) !== seen) return failed(SEEN_BEFORE);
  const read = readRows(context, text);
  if (!read.ok) return read;
  if (read.value.some(({ shown }) => shown.kind === 'refused')) return failed(NOTHING_REFUSED_FIRST);
  const cards = read.value.flatMap(({ shown, card }) => (shown.kind === 'same' || card === null ? [] : [card]));
  return putRateCards(context, { cards, action: 'rate card by a file' });
}

function seenOf(context: Context): string {
  return sha256(JSON.stringify(allCards(context)));
}

interface ReadCard {
  readonly shown: ImportRow;
  readonly card: RateCardInput | null;
}

function readRows(context: Context, text: string): Result<readonly ReadCard[]> {
  const allowed = authorise(context, 'read equipment');
  if (!allowed.ok) return allowed;
  const fields = columnsOf(houseFacts(context).pricing.currency);
  const table = readCsv(text);
  if (!table.ok) return table;
  const known = checkColumns(table.value, fields.map(columnName));
  if (!known.ok) return known;
  const there = new Map(allCards(context).map((card) => [`${card.model_number} ${card.starts_on}`, card]));
  const models = new Set(listModels(context.database.db).map(({ number }) => number));
  const texts = table.value.rows.map((row) => {
    const at = (field: EquipmentField) => (row[table.value.columns.indexOf(columnName(field))] ?? '').trim();
    return Object.fromEntries(fields.map((field) => [field.path, at(field)]));
  });
  const keyOf = (flat: Readonly<Record<string, string>>) => `${flat.model_number} ${flat.starts_on}`;
  const keys = texts.map(keyOf);
  return ok(
    texts.map((flat, index) => {
      const key = keyOf(flat);
      const problems = problemsOf(flat, { fields, models, isTwice: keys.indexOf(key) < index });
      const old = there.get(key);
      const differences = fields
        .map((field) => ({
          column: columnName(field),
          before: old === undefined ? '' : writeField(field, Reflect.get(old, field.path)),
          after: tidied(field, flat[field.path] ?? ''),
        }))
        .filter(({ before, after }) => before !== after);
      const late = differences.length > 0 && problems.length === 0 ? wrongDay(context, flat.starts_on ?? '') : null;
      if (late !== null)
        problems.push({
          column: 'from',
          sentence: `This card has begun or has no day: it stays as it is. Put a row with a day from ${today(context)} on instead.`,
        });
      const kind = problems.length > 0 ? 'refused' : differences.length === 0 ? 'same' : old ? 'changed' : 'added';
      const name = `${flat.model_number}${flat.starts_on === '' ? '' : ` from ${flat.starts_on}`}`;
      return {
        shown: {
          row: table.value.numbers[index] ?? 0,
          name,
          kind,
          differences: kind === 'changed' ? differences : [],
          problems,
        },
        card: kind === 'refused' ? null : cardOf(flat, fields),
      };
    }),
  );
}

/** `34.5` reads as `34.50`, so that only what really differs is told. */
function tidied(field: EquipmentField, text: string): string {
  const read = text === '' ? null : readField(field, text);
  return read?.ok ? writeField(field, read.value) : text;
}

interface Against {
  readonly fields: readonly EquipmentField[];
  readonly models: ReadonlySet<string>;
  readonly isTwice: boolean;
}

function problemsOf(flat: Readonly<Record<string, string>>, { fields, models, isTwice }: Against) {
  const problems: { column: string; sentence: string }[] = [];
  const number = flat.model_number ?? '';
  if (!models.has(number))
    problems.push({
      column: 'number',
      sentence: `There is no model ${number}: correct the number, or add the model first.`,
    });
  if (isTwice)
    problems.push({ column: 'from', sentence: 'This model has another row for the same day: take one of them out.' });
  for (const field of fields) {
    const text = flat[field.path] ?? '';
    const read = text === '' ? null : readField(field, text);
    if (read === null && !field.optional)
      problems.push({ column: columnName(field), sentence: 'Is missing: fill it in.' });
    if (read !== null && !read.ok)
      problems.push({ column: columnName(field), sentence: `The ${field.label} ${read.reason.sentence}.` });
  }
  return problems;
}

function cardOf(flat: Readonly<Record<string, string>>, fields: readonly EquipmentField[]): RateCardInput {
  const value = (path: string): number => {
    const field = fields.find((one) => one.path === path);
    const read = field === undefined ? null : readField(field, flat[path] ?? '');
    return read?.ok ? Number(read.value) : 0;
  };
  return {
    number: flat.model_number ?? '',
    starts_on: flat.starts_on ?? '',
    day_minor: value('day_minor'),
    week_minor: value('week_minor'),
    four_weeks_minor: value('four_weeks_minor'),
    minimum_days: value('minimum_days'),
    note: flat.note ?? '',
  };
}
