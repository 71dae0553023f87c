/*
 * What earlier visits know of the valves of one enquiry: records of the same customer and site, found again by tag.
 * Invariant: a site without a name, a line without a tag and a tag that stands twice know nothing; records set aside are shown, never used.
 * Not here: keeping what was found (record-visits.ts) and what a record does to a line (lib/found).
 * Read next: ../schedule/schedule-record.ts, ../../found/known-valve.ts.
 */
import { tagsOfEnquiry } from '#db/queries/schedule.ts';
import { type VisitRow, visitsOfSite } from '#db/queries/visits.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Found, KnownFromVisits } from '#lib/found/found.ts';
import type { FoundCells } from '#lib/found/found-columns.ts';
import { knowValve } from '#lib/found/known-valve.ts';
import { readFound } from '#lib/found/read-found.ts';
import { siteKey, tagKey } from '#lib/found/valve-identity.ts';
import type { Cells } from '#lib/intake/columns.ts';
import { type Context, today } from '#lib/services/context.ts';
import type { EnquiryRecord } from '#lib/services/enquiries/enquiry-record.ts';

export interface VisitView {
  readonly id: number;
  readonly on: string;
  readonly by: string;
  readonly under: string;
  readonly number: number;
  readonly cells: FoundCells;
  /** Why it is not used; empty while it may be. */
  readonly setAside: string;
  /** Only visits before the hire's first day are used for it. */
  readonly earlier: 'yes' | 'no';
}

export interface LineKnowledge {
  readonly line: ScheduleLine;
  readonly known: readonly KnownFromVisits[];
  readonly visits: readonly VisitView[];
  /** Everything the answer rests on, so that a duty is worked out anew when it changes. */
  readonly key: string;
}

export interface SiteKnowledge {
  readonly know: (read: { readonly line: ScheduleLine; readonly cells: Cells }) => LineKnowledge;
}

const NOTHING: SiteKnowledge = { know: ({ line }) => ({ line, known: [], visits: [], key: '' }) };

export function siteKnowledge(context: Context, { row, site }: Pick<EnquiryRecord, 'row' | 'site'>): SiteKnowledge {
  const key = siteKey(site.name ?? '');
  if (key === '') return NOTHING;
  const { db } = context.database;
  const rows = visitsOfSite(db, { customerId: row.customer_id, siteKey: key });
  if (rows.length === 0) return NOTHING;
  const byTag = groupByTag(rows);
  const repeated = repeats(tagsOfEnquiry(db, row.id).map(tagKey));
  return {
    know: ({ line, cells }) => {
      const tag = tagKey(cells.tag ?? '');
      const own = tag === '' ? undefined : byTag.get(tag);
      if (own === undefined) return { line, known: [], visits: [], key: '' };
      const visits = own.map((record) => viewOf(record, site.startsOn));
      const stateKey = JSON.stringify(own.map(({ cells_json, set_aside, under }) => [cells_json, set_aside, under]));
      if (repeated.has(tag)) return { line: ofWhichValve(line), known: [], visits, key: `${stateKey} repeated` };
      const records = own.filter(({ set_aside }) => set_aside === '').flatMap((record) => foundOf(context, record));
      return { ...knowValve({ line, records, startsOn: site.startsOn }), visits, key: stateKey };
    },
  };
}

function groupByTag(rows: readonly VisitRow[]): ReadonlyMap<string, readonly VisitRow[]> {
  const groups = new Map<string, VisitRow[]>();
  for (const row of rows) {
    const group = groups.get(row.tag_key);
    if (group) group.push(row);
    else groups.set(row.tag_key, [row]);
  }
  return groups;
}

function repeats(keys: readonly string[]): ReadonlySet<string> {
  const seen = new Set<string>();
  return new Set(keys.filter((key) => seen.has(key) || !seen.add(key)));
}

function viewOf(record: VisitRow, startsOn: string): VisitView {
  const cells = JSON.parse(record.cells_json) as FoundCells;
  return {
    id: record.id,
    on: record.visited_on,
    by: cells.by ?? '',
    under: record.under,
    number: record.number,
    cells,
    setAside: record.set_aside,
    earlier: record.visited_on < startsOn ? 'yes' : 'no',
  };
}

function foundOf(context: Context, record: VisitRow): readonly Found[] {
  const cells = JSON.parse(record.cells_json) as FoundCells;
  const { found } = readFound({ row: 1, cells, under: record.under, today: today(context) });
  return found === null ? [] : [found];
}

function ofWhichValve(line: ScheduleLine): ScheduleLine {
  return {
    ...line,
    visits: {
      findings: [
        {
          id: 'visit-of-which-valve',
          severity: 'note',
          about: ['tag'],
          sentence:
            'An earlier visit knows a valve of this tag, but the schedule has the tag more than once, so it is not used: give each valve its own tag.',
          source: 'house rule',
        },
      ],
    },
  };
}
