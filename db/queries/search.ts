/*
 * Asks the full-text index and the small tables beside it.
 * Invariant: what is typed is always words to look for, never a query language; what is open comes before what is over, then what fits best, then the newest.
 * Not here: what the index holds (../search-index.ts).
 * Read next: ../search-index.ts.
 */
import { sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { model } from '../schema/model.ts';
import { unit } from '../schema/unit.ts';
import { type SearchSource, SOURCES, SPAN } from '../search-index.ts';

export interface SearchHit {
  readonly id: number;
  /** With the words that were found between the two marks. */
  readonly title: string;
  readonly snippet: string;
  /** Empty while it is in use: `put away`, or the state in which its enquiry is over. */
  readonly over: string;
}

/** Characters that no text holds stand around what was found. */
export const MARK_BEGIN = '\u0002';
export const MARK_END = '\u0003';

interface Asked {
  readonly words: string;
  readonly source: SearchSource;
  readonly most: number;
}

export function searchText(db: DbOrTx, { words, source, most }: Asked): readonly SearchHit[] {
  const match = matchOf(words);
  if (match === '') return [];
  const [low, high] = rowsOf(source);
  const best = db.all<{ readonly row: number; readonly over: string }>(sql`
    SELECT hit.row, coalesce(${sql.raw(OVER[source])}, '') AS over FROM (
      SELECT rowid AS row, bm25(search_text, ${TITLE_WEIGHT}, 1.0) AS fit FROM search_text
      WHERE search_text MATCH ${match} AND rowid BETWEEN ${low} AND ${high} ORDER BY rowid DESC LIMIT ${LOOKED_AT}
    ) AS hit JOIN ${sql.raw(SOURCES[source].table)} AS found ON found.id = hit.row - ${low}
    ${sql.raw(BEGUN_BY_STRANGERS[source])} ORDER BY over <> '', hit.fit, hit.row DESC LIMIT ${most}`);
  const hits = new Map(
    db
      .all<SearchHit & { readonly row: number }>(sql`
        SELECT rowid AS row, rowid - ${low} AS id,
          highlight(search_text, 0, ${MARK_BEGIN}, ${MARK_END}) AS title,
          snippet(search_text, 1, ${MARK_BEGIN}, ${MARK_END}, '…', 16) AS snippet
        FROM search_text WHERE search_text MATCH ${match} AND rowid IN ${listOf(best.map(({ row }) => row))}`)
      .map((hit) => [hit.row, hit]),
  );
  return best.flatMap(({ row, over }) => {
    const hit = hits.get(row);
    return hit === undefined ? [] : [{ id: hit.id, title: hit.title, snippet: hit.snippet, over }];
  });
}

/** A word in the title counts as four in the text; judgement, no source. */
const TITLE_WEIGHT = 4;
/** The newest that have the words; among them the best are chosen, so that a common word stays quick. */
const LOOKED_AT = 2000;

const OF_ENQUIRY = `(SELECT state FROM enquiry WHERE enquiry.id = found.enquiry_id AND state IN ('declined', 'lapsed'))`;
const PUT_AWAY = `CASE WHEN found.archived_at IS NOT NULL THEN 'put away' END`;
const OF_CUSTOMER = `CASE WHEN found.archived_at IS NOT NULL OR EXISTS
  (SELECT 1 FROM customer WHERE customer.id = found.customer_id AND archived_at IS NOT NULL) THEN 'put away' END`;

/** SQL over the row that was found: why it is over, nothing while it is in use. */
const OVER: Readonly<Record<SearchSource, string>> = {
  enquiry: `CASE WHEN found.state IN ('declined', 'lapsed') THEN found.state END`,
  customer: PUT_AWAY,
  site: OF_CUSTOMER,
  contact: OF_CUSTOMER,
  line: OF_ENQUIRY,
  quote: `CASE WHEN found.state IN ('declined', 'withdrawn') THEN found.state ELSE ${OF_ENQUIRY} END`,
  attachment: OF_ENQUIRY,
  list: OF_ENQUIRY,
  note: OF_ENQUIRY,
};

const NEVER_SENT = `(SELECT enquiry_id FROM self_order WHERE stage = 'draft' AND contact_json = '{}' AND taken_by = '')`;
const NOT_OF_A_DRAFT = `WHERE found.enquiry_id NOT IN ${NEVER_SENT}`;

/** What strangers began and never sent is not found among the house's own work. */
const BEGUN_BY_STRANGERS: Readonly<Record<SearchSource, string>> = {
  enquiry: `WHERE found.id NOT IN ${NEVER_SENT}`,
  customer: 'WHERE NOT found.placeholder',
  ...{ site: '', contact: '', quote: '' },
  ...{ line: NOT_OF_A_DRAFT, attachment: NOT_OF_A_DRAFT, list: NOT_OF_A_DRAFT, note: NOT_OF_A_DRAFT },
};

/** Ids of every row of a source that holds the words, for lists that are filtered. */
export function searchIds(db: DbOrTx, { words, source, most }: Asked): readonly number[] {
  const match = matchOf(words);
  if (match === '') return [];
  const [low, high] = rowsOf(source);
  return db
    .all<{ readonly id: number }>(sql`
      SELECT rowid - ${low} AS id FROM search_text WHERE search_text MATCH ${match} AND rowid BETWEEN ${low} AND ${high}
      ORDER BY rowid DESC LIMIT ${most}`)
    .map(({ id }) => id);
}

/** The customers to whom sites or contacts belong. */
export function customersOfHits(
  db: DbOrTx,
  { source, ids }: { readonly source: 'site' | 'contact'; readonly ids: readonly number[] },
): readonly number[] {
  const { table } = SOURCES[source];
  return db
    .all<{ readonly id: number }>(
      sql`SELECT DISTINCT customer_id AS id FROM ${sql.raw(table)} WHERE id IN ${listOf(ids)}`,
    )
    .map(({ id }) => id);
}

interface Owner {
  readonly id: number;
  readonly name: string;
}

/** What the rows that were found belong to: their customer, or their enquiry. */
export function ownersOf(
  db: DbOrTx,
  { source, ids }: { readonly source: SearchSource; readonly ids: readonly number[] },
): ReadonlyMap<number, Owner> {
  if (source === 'customer' || ids.length === 0) return new Map();
  const { table } = SOURCES[source];
  const isOfCustomer = source === 'site' || source === 'contact' || source === 'enquiry';
  const owner = isOfCustomer ? 'customer' : 'enquiry';
  const name = isOfCustomer ? 'owner.name' : "owner.number || ' ' || owner.title";
  const rows = db.all<Owner & { readonly row: number }>(sql`
    SELECT found.id AS row, owner.id AS id, ${sql.raw(name)} AS name FROM ${sql.raw(table)} AS found
    JOIN ${sql.raw(owner)} AS owner ON owner.id = found.${sql.raw(`${owner}_id`)} WHERE found.id IN ${listOf(ids)}`);
  return new Map(rows.map(({ row, id, name: words }) => [row, { id, name: words }]));
}

function listOf(ids: readonly number[]) {
  return sql`(SELECT value FROM json_each(${JSON.stringify(ids)}))`;
}

export interface NamedHit {
  readonly number: string;
  readonly name: string;
}

export function searchModels(db: DbOrTx, asked: Pick<Asked, 'words' | 'most'>): readonly NamedHit[] {
  return db
    .select({ number: model.number, name: model.name })
    .from(model)
    .where(sql.join(likes(asked.words, sql`${model.number} || ' ' || ${model.name}`), sql` AND `))
    .orderBy(model.number)
    .limit(asked.most)
    .all();
}

export function searchUnits(db: DbOrTx, asked: Pick<Asked, 'words' | 'most'>): readonly NamedHit[] {
  return db
    .select({ number: unit.serial, name: model.name })
    .from(unit)
    .innerJoin(model, sql`${model.number} = ${unit.model_number}`)
    .where(sql.join(likes(asked.words, sql`${unit.serial}`), sql` AND `))
    .orderBy(unit.serial)
    .limit(asked.most)
    .all();
}

function likes(...[words, column]: readonly [words: string, column: ReturnType<typeof sql>]) {
  const all = wordsOf(words);
  if (all.length === 0) return [sql`0`];
  return all.map((word) => sql`${column} LIKE ${`%${word.replace(/[\\%_]/g, '\\$&')}%`} ESCAPE '\\'`);
}

function rowsOf(source: SearchSource): readonly [number, number] {
  const low = SOURCES[source].number * SPAN;
  return [low, low + SPAN - 1];
}

/** Each word as a phrase whose last part may go on; a word without a letter or digit would be no phrase at all. */
function matchOf(words: string): string {
  return wordsOf(words)
    .filter((word) => /[\p{L}\p{N}]/u.test(word))
    .map((word) => `"${word.replaceAll('"', '""')}"*`)
    .join(' ');
}

const WORDS_MOST = 12;

function wordsOf(words: string): readonly string[] {
  return words
    .replace(/[\p{Cc}]/gu, ' ')
    .split(/\s+/)
    .filter((word) => word !== '')
    .slice(0, WORDS_MOST);
}
