/*
 * Looks for words in everything: enquiries, customers, sites, contacts, lines, quotes, models, serial numbers, files and notes.
 * Invariant: reads only; each kind answers a few that fit best, those in use first, and says when there are more.
 * Not here: what is looked through (db/search-index.ts).
 * Read next: ../../../db/queries/search.ts.
 */
import { ownersOf, searchModels, searchText, searchUnits } from '#db/queries/search.ts';
import type { SearchSource } from '#db/search-index.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';

export type SearchKind = SearchSource | 'model' | 'unit';

export interface SearchEntry {
  readonly id: number;
  /** With what was found between two control characters, as db/queries/search.ts marks it. */
  readonly title: string;
  readonly snippet: string;
  /** Why it is no longer in use; empty where it is. */
  readonly over: string;
  /** What it belongs to: an enquiry, or a customer for a site or contact; of a model or unit the number. */
  readonly owner: { readonly id: number; readonly name: string } | null;
}

export interface SearchGroup {
  readonly kind: SearchKind;
  readonly entries: readonly SearchEntry[];
  readonly more: 'yes' | 'no';
}

export interface SearchAnswer {
  readonly words: string;
  readonly groups: readonly SearchGroup[];
}

const ENTRIES_A_KIND = 8;
const ORDER: readonly SearchSource[] = [
  'enquiry',
  'customer',
  'site',
  'contact',
  'quote',
  'line',
  'attachment',
  'list',
  'note',
];

export function searchHouse(context: Context, words: string): Result<SearchAnswer> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const plain = words.trim();
  if (plain === '') return ok({ words: '', groups: [] });
  const groups = [
    ...ORDER.map((source) => textGroup(context, { source, words: plain })),
    equipmentGroup('model', searchModels(context.database.db, { words: plain, most: ENTRIES_A_KIND + 1 })),
    equipmentGroup('unit', searchUnits(context.database.db, { words: plain, most: ENTRIES_A_KIND + 1 })),
  ];
  return ok({ words: plain, groups: groups.filter(({ entries }) => entries.length > 0) });
}

function textGroup(
  context: Context,
  { source, words }: { readonly source: SearchSource; readonly words: string },
): SearchGroup {
  const db = context.database.db;
  const hits = searchText(db, { words, source, most: ENTRIES_A_KIND + 1 });
  const shown = hits.slice(0, ENTRIES_A_KIND);
  const owners = ownersOf(db, { source, ids: shown.map(({ id }) => id) });
  return {
    kind: source,
    entries: shown.map((hit) => ({ ...hit, owner: owners.get(hit.id) ?? null })),
    more: hits.length > shown.length ? 'yes' : 'no',
  };
}

function equipmentGroup(
  ...[kind, hits]: readonly ['model' | 'unit', readonly { readonly number: string; readonly name: string }[]]
): SearchGroup {
  const shown = hits.slice(0, ENTRIES_A_KIND);
  return {
    kind,
    entries: shown.map(({ number, name }, index) => ({
      id: index,
      title: number,
      snippet: name,
      over: '',
      owner: null,
    })),
    more: hits.length > shown.length ? 'yes' : 'no',
  };
}
