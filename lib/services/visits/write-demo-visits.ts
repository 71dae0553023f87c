/*
 * Writes what crews found at the valves of a demo enquiry on visits before the house was loaded.
 * Invariant: every demo visit can be read; it is kept as one that was typed in would be.
 * Not here: keeping visits of real hires (record-visits.ts).
 * Read next: ../house/prepare-house.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { keepVisit } from '#db/queries/visits.ts';
import { readFound } from '#lib/found/read-found.ts';
import { siteKey, tagKey } from '#lib/found/valve-identity.ts';
import { addDays } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { type DemoEnquiry, demoVisits } from '#seeds/load.ts';

interface DemoVisitWriting {
  readonly at: string;
  readonly demo: DemoEnquiry;
  readonly enquiryId: number;
  readonly customerId: number;
}

const UNDER = 'site sheet kept on paper';

export function writeDemoVisits(tx: DbOrTx, { at, demo, enquiryId, customerId }: DemoVisitWriting): void {
  const today = at.slice(0, 10);
  const site = String(demo.site.name ?? '');
  for (const { enquiry, days_before, cells } of demoVisits()) {
    if (enquiry !== demo.id) continue;
    const visited_on = addDays(today, -days_before);
    const whole = { ...cells, visited_on };
    const { found, problems } = readFound({ row: 1, cells: whole, under: UNDER, today });
    invariant(
      found,
      `The demo visit of ${cells.tag} cannot be read: ${problems.map(({ sentence }) => sentence).join(' ')}`,
    );
    keepVisit(tx, {
      customer_id: customerId,
      site_key: siteKey(site),
      tag_key: tagKey(cells.tag),
      site,
      tag: cells.tag,
      number: found.number,
      visited_on,
      cells_json: JSON.stringify(whole),
      enquiry_id: enquiryId,
      under: UNDER,
      recorded_by: 'Demo house',
      recorded_at: at,
    });
  }
}
