/*
 * Copies the facts of a customer's site into an enquiry, or lets go of the site and keeps the copy.
 * Invariant: the enquiry works from its own copy alone; dates, crews and days stay its own; a change in the meantime is a conflict.
 * Not here: editing the copy (change-enquiry.ts) or the site (save-site.ts).
 * Read next: site-difference.ts.
 */
import { changeEnquiry as changeRow, findEnquiry } from '#db/queries/enquiries.ts';
import { findSite } from '#db/queries/places.ts';
import { factsOfJob, parseSite } from '#lib/contracts/site.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { noSuchEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { logChange } from '#lib/services/log-change.ts';
import { noSuchSite } from './save-site.ts';

interface LinkAsked {
  readonly enquiryId: number;
  /** Null lets go of it. */
  readonly site_id: number | null;
  readonly version: number;
}

export function linkSite(context: Context, asked: LinkAsked): Result<{ readonly version: number }> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const db = context.database.db;
  const row = findEnquiry(db, asked.enquiryId);
  if (!row) return noSuchEnquiry(asked.enquiryId);
  const columns =
    asked.site_id === null
      ? ok({ site_id: null, site_version: null })
      : copyOf(context, { row, siteId: asked.site_id });
  if (!columns.ok) return columns;
  return db.transaction(
    (tx): Result<{ readonly version: number }> => {
      if (!changeRow(tx, { id: row.id, at: timestamp(context), set: columns.value, version: asked.version })) {
        return failed({
          code: 'changed-meanwhile',
          sentence:
            'Somebody else changed this enquiry while you were working. Load it again before you take the site over.',
        });
      }
      const action = asked.site_id === null ? 'site let go' : 'site taken over';
      logChange(tx, { context, deed: { action, subject: `enquiry ${row.id}`, detail: columns.value } });
      return ok({ version: asked.version + 1 });
    },
    { behavior: 'immediate' },
  );
}

function copyOf(
  context: Context,
  {
    row,
    siteId,
  }: { readonly row: { readonly customer_id: number; readonly site_json: string }; readonly siteId: number },
) {
  const site = findSite(context.database.db, siteId);
  if (!site || site.customer_id !== row.customer_id) return noSuchSite();
  const own: Record<string, unknown> = JSON.parse(row.site_json);
  const place: Record<string, unknown> = JSON.parse(site.facts_json);
  const facts = { ...place, ...factsOfJob(own) };
  const read = parseSite(facts, { startsOn: today(context) });
  if (!read.ok) return read;
  return ok({ site_id: site.id, site_version: site.version, site_json: JSON.stringify(facts) });
}
