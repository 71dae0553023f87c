/*
 * How an enquiry's copy of a site stands to the site as it is now.
 * Invariant: facts are compared one by one, as they are written; dates, crews and days are not.
 * Not here: taking over (link-site.ts).
 * Read next: link-site.ts.
 */
import type { EnquiryRow } from '#db/queries/enquiries.ts';
import { findSite, type SiteRow, sitesOf } from '#db/queries/places.ts';
import { factsOfPlace } from '#lib/contracts/site.ts';
import type { Context } from '#lib/services/context.ts';

export interface FactDifference {
  readonly key: string;
  readonly here: string;
  readonly there: string;
}

export interface SiteLink {
  readonly id: number;
  readonly name: string;
  readonly customerId: number;
  /** Version of the site that was copied. */
  readonly copied: number;
  /** Whether the site was changed after it was copied. */
  readonly changedSince: 'yes' | 'no';
  readonly differences: readonly FactDifference[];
}

export function siteLinkOf(context: Context, row: EnquiryRow): SiteLink | null {
  const site = row.site_id === null ? undefined : findSite(context.database.db, row.site_id);
  if (!site) return null;
  return {
    id: site.id,
    name: site.name,
    customerId: site.customer_id,
    copied: row.site_version ?? 0,
    changedSince: site.version > (row.site_version ?? 0) ? 'yes' : 'no',
    differences: differencesOf(row, site),
  };
}

/** Sites that an enquiry may be linked to: those in use, and its own. */
export function sitesToChoose(
  context: Context,
  row: EnquiryRow,
): readonly { readonly id: number; readonly name: string }[] {
  return sitesOf(context.database.db, row.customer_id)
    .filter((site) => site.archived_at === null || site.id === row.site_id)
    .map(({ id, name }) => ({ id, name }));
}

function differencesOf(...[row, site]: readonly [EnquiryRow, SiteRow]): readonly FactDifference[] {
  const here = factsOfPlace(JSON.parse(row.site_json));
  const there = factsOfPlace(JSON.parse(site.facts_json));
  const keys = [...new Set([...Object.keys(here), ...Object.keys(there)])];
  return keys
    .map((key) => ({ key, here: textOf(here[key]), there: textOf(there[key]) }))
    .filter((difference) => difference.here !== difference.there);
}

function textOf(value: unknown): string {
  if (value === undefined || value === null) return '';
  if (Array.isArray(value))
    return value
      .map((part) => (typeof part === 'object' && part !== null && 'sentence' in part ? part.sentence : part))
      .join(', ');
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return String(value);
}
