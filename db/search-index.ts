/*
 * The full-text index over what people look for: made here, kept up by triggers, filled anew whenever it does not match the tables.
 * Invariant: one row of the index a row of its source; its rowid is SPAN times the source's number plus the id of the row.
 * Not here: asking it (queries/search.ts); models and units, which are few enough to be looked through.
 * Read next: triggers.ts, queries/search.ts.
 */
import type Database from 'better-sqlite3';

/** Ids of every source stay below it. */
export const SPAN = 1_000_000_000_000;

interface Source {
  readonly number: number;
  readonly table: string;
  /** SQL over the columns of the row; `@` stands for NEW, OLD or the table. */
  readonly title: string;
  readonly body: string;
}

const json = (column: string, keys: string): string =>
  keys
    .split(' ')
    .map((key) => `coalesce(json_extract(@.${column}, '$.${key}'), '')`)
    .join(" || ' ' || ");

/** What is looked for in, source by source. */
export const SOURCES = {
  enquiry: {
    number: 1,
    table: 'enquiry',
    title: "@.number || ' ' || @.title",
    body: `@.reference || ' ' || ${json('site_json', 'name')}`,
  },
  customer: {
    number: 2,
    table: 'customer',
    title: '@.name',
    body: `@.code || ' ' || ${json('facts_json', 'contact address email telephone note')}`,
  },
  site: { number: 3, table: 'site', title: '@.name', body: "@.address || ' ' || @.access_note" },
  contact: {
    number: 4,
    table: 'contact',
    title: '@.name',
    body: "@.position || ' ' || @.email || ' ' || @.telephone || ' ' || @.note",
  },
  line: {
    number: 5,
    table: 'schedule_line',
    title: json('cells_json', 'tag'),
    body: json('cells_json', 'location notes'),
  },
  quote: { number: 6, table: 'quote', title: "@.number || ' ' || @.revision", body: "''" },
  attachment: { number: 7, table: 'attachment', title: '@.file_name', body: "''" },
  list: { number: 8, table: 'list_file', title: '@.file_name', body: "''" },
  note: { number: 9, table: 'enquiry_note', title: "''", body: '@.text' },
} as const satisfies Readonly<Record<string, Source>>;

export type SearchSource = keyof typeof SOURCES;

const TABLE = `CREATE VIRTUAL TABLE search_text USING fts5(title, body, tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3')`;

/** Fills the index where it is missing or does not match the tables; its triggers are made with all others. */
export function createSearchIndex(raw: Database.Database): void {
  const stands = raw.prepare("SELECT sql FROM sqlite_master WHERE name = 'search_text'").pluck().get();
  if (stands === TABLE && rowsIndexed(raw) === rowsToIndex(raw)) return;
  raw.exec(`DROP TABLE IF EXISTS search_text; ${TABLE};`);
  for (const source of Object.values(SOURCES))
    raw.exec(`INSERT INTO search_text (rowid, title, body) ${selection(source)}`);
}

/** Name and body of each trigger that keeps the index up. */
export function searchTriggers(): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.values(SOURCES).flatMap(triggersOf));
}

function rowsIndexed(raw: Database.Database): unknown {
  return raw.prepare('SELECT count(*) FROM search_text').pluck().get();
}

function rowsToIndex(raw: Database.Database): unknown {
  const counts = Object.values(SOURCES).map(({ table }) => `(SELECT count(*) FROM ${table})`);
  return raw
    .prepare(`SELECT ${counts.join(' + ')}`)
    .pluck()
    .get();
}

function selection({ number, table, title, body }: Source): string {
  return `SELECT ${number} * ${SPAN} + id, ${over(title, table)}, ${over(body, table)} FROM ${table}`;
}

function triggersOf({ number, table, title, body }: Source): readonly (readonly [string, string])[] {
  const rowid = (row: string): string => `${number} * ${SPAN} + ${row}.id`;
  const both = `${title} || char(10) || ${body}`;
  const add = `INSERT INTO search_text (rowid, title, body) VALUES (${rowid('NEW')}, ${over(title, 'NEW')}, ${over(body, 'NEW')});`;
  const drop = `DELETE FROM search_text WHERE rowid = ${rowid('OLD')};`;
  const isOther = `${over(both, 'NEW')} IS NOT ${over(both, 'OLD')} OR NEW.id IS NOT OLD.id`;
  return [
    [`search_${table}_insert`, `AFTER INSERT ON ${table} BEGIN ${add} END`],
    [`search_${table}_delete`, `AFTER DELETE ON ${table} BEGIN ${drop} END`],
    [`search_${table}_update`, `AFTER UPDATE ON ${table} WHEN ${isOther} BEGIN ${drop} ${add} END`],
  ];
}

function over(...[expression, row]: readonly [expression: string, row: string]): string {
  return expression.replaceAll('@', row);
}
