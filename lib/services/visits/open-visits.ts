/*
 * The valves of an enquiry in the working order of the site sheet, each with what this visit found and what others did.
 * Invariant: a line of several identical valves has a row for each of them, as on the site sheet.
 * Not here: saving (record-visits.ts).
 * Read next: record-visits.ts.
 */
import type { FoundCells } from '#lib/found/found-columns.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { dutyOf, type LineRecord, readSchedule } from '#lib/services/schedule/schedule-record.ts';
import { formatRange } from '#lib/units/format-quantity.ts';
import { visitedUnder } from './record-visits.ts';
import type { VisitView } from './site-knowledge.ts';

export interface VisitedValve {
  readonly lineId: number;
  readonly tag: string;
  readonly number: number;
  readonly of: number;
  readonly location: string;
  readonly expectedTurns: string;
  /** The newest record from the hire's first day on; null where none was kept yet. */
  readonly now: FoundCells | null;
  readonly visits: readonly VisitView[];
}

export interface VisitsView {
  readonly under: string;
  readonly site: string;
  readonly today: string;
  readonly valves: readonly VisitedValve[];
}

const order = new Intl.Collator('en', { numeric: true });

export function openVisits(context: Context, enquiryId: number): Result<VisitsView> {
  const allowed = authorise(context, 'record visits');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, enquiryId);
  if (!enquiry.ok) return enquiry;
  const { site, row } = enquiry.value;
  const records = readSchedule(context, enquiry.value)
    .filter(({ cells }) => (cells.tag ?? '').trim() !== '')
    .toSorted(
      (a, b) =>
        (a.line.place.placeOrder ?? Number.POSITIVE_INFINITY) - (b.line.place.placeOrder ?? Number.POSITIVE_INFINITY) ||
        order.compare(a.line.tag, b.line.tag) ||
        0,
    );
  return ok({
    under: visitedUnder(context, enquiry.value),
    site: site.name ?? '',
    today: today(context),
    valves: records.flatMap((record) => {
      const turns = formatRange(dutyOf({ record, site, siteKey: row.site_json }).turns, 'si');
      return Array.from({ length: record.line.qty }, (_, index) => valveOf({ record, number: index + 1, turns }));
    }),
  });
}

function valveOf({
  record,
  number,
  turns,
}: {
  readonly record: LineRecord;
  readonly number: number;
  readonly turns: string;
}): VisitedValve {
  const { line, visits } = record;
  const own = visits.filter((visit) => visit.number === number);
  return {
    lineId: record.row.id,
    tag: line.tag,
    number,
    of: line.qty,
    location: line.place.location ?? '',
    expectedTurns: turns,
    now: own.find(({ earlier }) => earlier === 'no')?.cells ?? null,
    visits: own,
  };
}
