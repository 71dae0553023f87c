import { describe, expect, it } from 'vitest';
import type { Context } from '#lib/services/context.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { changeSite } from '#lib/services/customers/save-site.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { awaitPlan, readPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { receiveList } from '#lib/services/schedule/receive-list.ts';
import { takeList } from '#lib/services/schedule/take-list.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

const RULE = { id: 'no-engine', kind: 'no-source', value: 'petrol', sentence: 'No engine runs in the pump house.' };

function siteOf(context: Context) {
  const customerId = granted(openEnquiry(context, 7)).customer.id;
  const [site] = granted(openCustomer(context, customerId)).sites;
  if (site === undefined) throw new Error('The demo customer has no site.');
  return { customerId, site };
}

function ruled(context: Context, rules: readonly unknown[]) {
  const { site } = siteOf(context);
  const { id: siteId, version, name, address, accessNote: access_note, facts } = site;
  return changeSite(context, { siteId, version, name, address, access_note, facts: { ...facts, house_rules: rules } });
}

/** A new enquiry at the site, where only petrol is allowed. */
async function unserved(context: Context): Promise<readonly string[]> {
  const { customerId, site } = siteOf(context);
  const asked = { title: 'At the pump house', customer: { id: customerId }, site_id: site.id };
  const facts = { sources_allowed: ['petrol'], starts_on: '2026-03-16' };
  const { id } = granted(createEnquiry(context, { ...asked, site: facts }));
  const bytes = new TextEncoder().encode('tag,type,size,driven by,depth\nV1,gate,DN 150,key cap,1.1 m\n');
  const { fileId, tables } = granted(await receiveList(context, { enquiryId: id, fileName: 'one.csv', bytes }));
  const [table] = tables;
  const mapping = table?.mapping ?? { headerRow: null, columns: [] };
  granted(await takeList(context, { enquiryId: id, fileId, table: table?.name ?? '', mapping, existing: 'keep' }));
  granted(startPlan(context, id));
  granted(await awaitPlan(context, id));
  return readPlan(context, id)?.unserved.flatMap((line) => [line.tag, JSON.stringify(line)]) ?? [];
}

describe('a rule of a site', () => {
  it('keeps equipment out of plans at that site, is named where it decides, and is not asked while it is switched off', async () => {
    const context = await demoHouseContext();
    expect(await unserved(context)).toEqual([]);
    granted(ruled(context, [{ ...RULE, off: true }]));
    expect(siteOf(context).site.rules).toMatchObject([{ off: true }]);
    expect(await unserved(context)).toEqual([]);
    granted(ruled(context, [RULE]));
    const [tag, why] = await unserved(context);
    expect(tag).toBe('V1');
    expect(why).toContain('No engine runs in the pump house.');
  }, 240_000);

  it('that its kind cannot read is refused', async () => {
    const context = await demoHouseContext();
    expect(ruled(context, [{ ...RULE, value: 'steam' }])).toMatchObject({
      ok: false,
      reason: { code: 'site-unreadable', sentence: expect.stringContaining('is none of') },
    });
  });
});
