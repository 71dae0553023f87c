/*
 * Keeps what a crew found at the valves of an enquiry, for the next time those valves are met.
 * Invariant: a record goes to the valve of its own customer, site and tag and to no other; what is refused leaves the rest recorded and is named.
 * Not here: using the records (site-knowledge.ts).
 * Read next: import-visits.ts, ../../found/read-found.ts.
 */
import { addAuditEntry } from '#db/queries/audit.ts';
import { bookingsOfEnquiry } from '#db/queries/bookings.ts';
import { listQuotes } from '#db/queries/quotes.ts';
import { keepVisit, type VisitRow, visitsOfSite } from '#db/queries/visits.ts';
import type { Found } from '#lib/found/found.ts';
import type { FoundCells } from '#lib/found/found-columns.ts';
import type { FoundRow } from '#lib/found/match-found.ts';
import { type FoundProblem, readFound } from '#lib/found/read-found.ts';
import { siteKey, tagKey } from '#lib/found/valve-identity.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { type EnquiryRecord, readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { readSchedule } from '#lib/services/schedule/schedule-record.ts';

export interface VisitsRecorded {
  /** Rows that were kept. */
  readonly rows: readonly number[];
  readonly problems: readonly FoundProblem[];
}

export function recordVisits(
  context: Context,
  input: { readonly enquiryId: number; readonly rows: readonly FoundRow[] },
): Result<VisitsRecorded> {
  const allowed = authorise(context, 'record visits');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, input.enquiryId);
  if (!enquiry.ok) return enquiry;
  const site = enquiry.value.site.name ?? '';
  if (siteKey(site) === '')
    return failed({
      code: 'site-without-name',
      sentence:
        'Give the site a name under “Site” first: a valve is found again by its customer, its site and its tag.',
    });
  if (input.rows.length > LIMITS.schedule_lines)
    return failed({
      code: 'too-many-rows',
      sentence: `At most ${LIMITS.schedule_lines} valves at once; split the list.`,
    });
  const judged = judgeRows(context, enquiry.value, input.rows);
  const problems = judged.flatMap((row) => row.problems);
  const good = judged.flatMap(({ row, kept }) => (kept === null ? [] : [{ row, ...kept }]));
  if (good.length > 0) save(context, enquiry.value, { site, good });
  return ok({ rows: good.map(({ row }) => row), problems });
}

/** Where a visit belongs, as its source sentence names it: the accepted quote, else the newest, else the enquiry. */
export function visitedUnder(context: Context, { row }: Pick<EnquiryRecord, 'row'>): string {
  const { db } = context.database;
  const quotes = listQuotes(db, row.id);
  const accepted = new Set(bookingsOfEnquiry(db, row.id).map(({ quote_id }) => quote_id));
  const quote = quotes.find(({ id }) => accepted.has(id)) ?? quotes[0];
  return quote === undefined ? `enquiry ${row.number}` : `quote ${quote.number} ${quote.revision}`;
}

interface Kept {
  readonly tag: string;
  readonly cells: FoundCells;
  readonly found: Found;
}

interface Judged {
  readonly row: number;
  readonly kept: Kept | null;
  readonly problems: readonly FoundProblem[];
}

function judgeRows(context: Context, enquiry: EnquiryRecord, rows: readonly FoundRow[]): readonly Judged[] {
  const valves = valvesOf(context, enquiry);
  const under = visitedUnder(context, enquiry);
  const seen = new Set<string>();
  return rows.map(({ row, cells }): Judged => {
    const { found, problems } = readFound({ row, cells, under, today: today(context) });
    const refused = refuseValve({ row, cells, found, valves, seen });
    if (refused !== null) return { row, kept: null, problems: [...problems, refused] };
    return { row, kept: found === null ? null : { tag: cells.tag?.trim() ?? '', cells, found }, problems };
  });
}

/** How many lines of the schedule have a tag, and how many valves the first of them stands for. */
function valvesOf(context: Context, enquiry: EnquiryRecord) {
  const valves = new Map<string, { readonly lines: number; readonly qty: number }>();
  for (const { cells, line } of readSchedule(context, enquiry)) {
    const key = tagKey(cells.tag ?? '');
    if (key !== '') valves.set(key, { lines: (valves.get(key)?.lines ?? 0) + 1, qty: line.qty });
  }
  return valves;
}

function refuseValve({
  row,
  cells,
  found,
  valves,
  seen,
}: FoundRow & {
  readonly found: Found | null;
  readonly valves: ReturnType<typeof valvesOf>;
  readonly seen: Set<string>;
}): FoundProblem | null {
  const tag = cells.tag?.trim() ?? '';
  const valve = valves.get(tagKey(tag));
  const refusal = (column: FoundProblem['column'], sentence: string, remedy: string): FoundProblem => ({
    row,
    column,
    severity: 'refused',
    sentence,
    remedy,
  });
  if (tagKey(tag) === '') return refusal('tag', 'No valve is named.', 'Write its tag as on the schedule.');
  if (valve === undefined)
    return refusal('tag', `“${tag}” is not on this enquiry's schedule.`, 'Check the tag, or add the line first.');
  if (valve.lines > 1)
    return refusal(
      'tag',
      `“${tag}” stands ${valve.lines} times on the schedule.`,
      'Give each valve its own tag first.',
    );
  if (found === null) return null;
  if (found.number > valve.qty)
    return refusal(
      'number',
      `“${tag}” stands for ${valve.qty} on the schedule, not ${found.number}.`,
      'Check the number.',
    );
  const key = `${tagKey(tag)} ${found.number} ${found.on}`;
  if (seen.has(key)) return refusal('tag', `“${tag}” is in this list twice for one day.`, 'Keep one of the rows.');
  seen.add(key);
  return null;
}

function save(
  context: Context,
  { row }: EnquiryRecord,
  { site, good }: { readonly site: string; readonly good: readonly Kept[] },
): void {
  const at = timestamp(context);
  const under = visitedUnder(context, { row });
  const site_key = siteKey(site);
  context.database.db.transaction(
    (tx) => {
      const before = visitsOfSite(tx, { customerId: row.customer_id, siteKey: site_key });
      const kept = good.map(({ tag, cells, found }) => {
        const record: Omit<VisitRow, 'id' | 'set_aside'> = {
          customer_id: row.customer_id,
          site_key,
          tag_key: tagKey(tag),
          site,
          tag,
          number: found.number,
          visited_on: found.on,
          cells_json: JSON.stringify(cells),
          enquiry_id: row.id,
          under,
          recorded_by: context.actor.name,
          recorded_at: at,
        };
        const id = keepVisit(tx, record);
        return { id, cells, before: before.find((old) => old.id === id)?.cells_json ?? null };
      });
      addAuditEntry(tx, {
        at,
        who: context.actor,
        action: 'visits recorded',
        subject: `enquiry ${row.id}`,
        detail_json: JSON.stringify(kept),
      });
    },
    { behavior: 'immediate' },
  );
}
