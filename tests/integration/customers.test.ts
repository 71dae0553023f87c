import { describe, expect, it } from 'vitest';
import type { Context } from '#lib/services/context.ts';
import { alikeRecords } from '#lib/services/customers/alike-customers.ts';
import { findCustomers } from '#lib/services/customers/find-customers.ts';
import { linkSite } from '#lib/services/customers/link-site.ts';
import { listBands, listCustomers } from '#lib/services/customers/list-customers.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { putAway } from '#lib/services/customers/put-away.ts';
import { changeContact, createContact } from '#lib/services/customers/save-contact.ts';
import { changeCustomer, createCustomer, NOTHING_AGREED } from '#lib/services/customers/save-customer.ts';
import { changeSite, createSite } from '#lib/services/customers/save-site.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { openEnquiryLife } from '#lib/services/enquiries/open-enquiry-life.ts';
import { whyPart } from '#lib/services/lines/why-part.ts';
import { prepareInput } from '#lib/services/plans/plan-enquiry.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

const refused = (code: string) => ({ ok: false, reason: { code } });
const PERSON = { name: 'Edda Moorcroft', site_id: null, position: 'Valves', email: '', telephone: '', note: '' };
const PLACE = { name: 'North pond', address: '', access_note: '', facts: { sources_allowed: ['battery'] } };

async function withCustomer(): Promise<{ readonly context: Context; readonly customerId: number }> {
  const context = await demoHouseContext();
  const { id } = granted(createCustomer(context, { name: 'Harrowdene Locks', facts: NOTHING_AGREED }));
  return { context, customerId: id };
}

describe('a customer', () => {
  it('is made with a code of its own, found by any word of it, and changed field by field', async () => {
    const { context, customerId } = await withCustomer();
    granted(changeCustomer(context, { customerId, version: 1, facts: { address: ['Lock House', 'Harrowdene'] } }));
    granted(changeCustomer(context, { customerId, version: 2, facts: { payment_days: 14 } }));
    const customer = granted(openCustomer(context, customerId));
    expect(customer.facts).toMatchObject({ address: ['Lock House', 'Harrowdene'], payment_days: 14, account: 'new' });
    for (const words of ['harrow', 'LOCK house', 'hárrowdene'])
      expect(granted(findCustomers(context, { words, archived: 'no', page: 1 })).rows.map(({ id }) => id)).toEqual([
        customerId,
      ]);
    expect(customer.log.map(({ action }) => action)).toEqual(['customer changed', 'customer changed', 'customer made']);
  });

  it('is found through a contact and a site, and pages end where the list ends', async () => {
    const { context, customerId } = await withCustomer();
    granted(createContact(context, { customerId, ...PERSON }));
    granted(createSite(context, { customerId, ...PLACE }));
    for (const words of ['moorcroft', 'north po']) {
      const found = granted(findCustomers(context, { words, archived: 'no', page: 9 }));
      expect([found.rows.map(({ id }) => id), found.page, found.pages]).toEqual([[customerId], 1, 1]);
    }
    const all = granted(findCustomers(context, { words: '', archived: 'no', page: 1 })).rows;
    expect(all.find(({ id }) => id === customerId)).toMatchObject({ sites: 1, contacts: 1, enquiries: 0 });
    expect(all.find(({ code }) => code === 'C-1007')).toMatchObject({ sites: 1, contacts: 2, openEnquiries: 1 });
  });

  it('is put away and brought back, never deleted, and is not offered meanwhile', async () => {
    const { context, customerId } = await withCustomer();
    const offered = () => granted(listCustomers(context)).some(({ id }) => id === customerId);
    granted(putAway(context, { kind: 'customer', id: customerId, archived: 'yes' }));
    expect(offered()).toBe(false);
    expect(granted(findCustomers(context, { words: '', archived: 'yes', page: 1 })).rows).toHaveLength(1);
    granted(putAway(context, { kind: 'customer', id: customerId, archived: 'no' }));
    expect(offered()).toBe(true);
  });

  it('that two people change keeps the first change, and the second is told', async () => {
    const { context, customerId } = await withCustomer();
    granted(changeCustomer(context, { customerId, version: 1, name: 'Harrowdene Lock Keepers' }));
    expect(changeCustomer(context, { customerId, version: 1, name: 'Other' })).toMatchObject(
      refused('changed-meanwhile'),
    );
    expect(granted(openCustomer(context, customerId)).name).toBe('Harrowdene Lock Keepers');
  });

  it('is refused with a reason where something cannot be kept', async () => {
    const { context, customerId } = await withCustomer();
    const change = (facts: Readonly<Record<string, unknown>>) =>
      changeCustomer(context, { customerId, version: 1, facts });
    expect(createCustomer(context, { name: ' ', facts: NOTHING_AGREED })).toMatchObject(refused('name-missing'));
    expect(change({ delivery_band: 'moon' })).toMatchObject(refused('no-such-band'));
    expect(change({ currency: 'euros' })).toMatchObject(refused('customer-unreadable'));
    expect(
      change({ house_rules: [{ id: 'x', kind: 'no-source', value: 'steam', sentence: 'No steam.' }] }),
    ).toMatchObject(refused('customer-unreadable'));
    expect(change({ colour: 'green' })).toMatchObject(refused('customer-unreadable'));
    expect(changeCustomer(context, { customerId: 999, version: 1 })).toMatchObject(refused('no-such-customer'));
    expect(openCustomer(context, 999)).toMatchObject(refused('no-such-customer'));
    expect(putAway(context, { kind: 'customer', id: 999, archived: 'yes' })).toMatchObject(refused('no-such-customer'));
    expect(putAway(context, { kind: 'site', id: 999, archived: 'yes' })).toMatchObject(refused('no-such-site'));
    expect(putAway(context, { kind: 'contact', id: 999, archived: 'yes' })).toMatchObject(refused('no-such-contact'));
  });

  it('is told to be here already while somebody types it, and its people too', async () => {
    const { context, customerId } = await withCustomer();
    granted(createContact(context, { customerId, ...PERSON, telephone: '0000 555 0999' }));
    const alike = (asked: Parameters<typeof alikeRecords>[1]) =>
      granted(alikeRecords(context, asked)).map(({ name, why }) => `${name}: ${why}`);
    expect(alike({ kind: 'customer', name: 'Harowdene Locks Ltd' })).toEqual([
      'Harrowdene Locks: nearly the same name',
    ]);
    expect(alike({ kind: 'customer', name: 'Harrowdene Locks', self: customerId })).toEqual([]);
    expect(alike({ kind: 'customer', telephone: '+99 00 555 0999' })).toEqual([
      'Harrowdene Locks: the same telephone number',
    ]);
    expect(alike({ kind: 'contact', name: 'Edda Moorcraft' })).toEqual(['Edda Moorcroft: nearly the same name']);
    granted(createSite(context, { customerId, ...PLACE }));
    expect(alike({ kind: 'site', customerId, name: 'the north pond' })).toEqual(['North pond: the same name']);
  });

  it.each(['yard', 'contractor'] as const)('is not for a %s', async (role) => {
    const context = await demoHouseContext(role);
    const no = refused('not-allowed');
    expect(findCustomers(context, { words: '', archived: 'no', page: 1 })).toMatchObject(no);
    expect(openCustomer(context, 1)).toMatchObject(no);
    expect(listBands(context)).toMatchObject(no);
    expect(alikeRecords(context, { kind: 'customer', name: 'x' })).toMatchObject(no);
    expect(createCustomer(context, { name: 'x', facts: NOTHING_AGREED })).toMatchObject(no);
    expect(changeCustomer(context, { customerId: 1, version: 1 })).toMatchObject(no);
    expect(createSite(context, { customerId: 1, ...PLACE })).toMatchObject(no);
    expect(changeSite(context, { siteId: 1, version: 1, ...PLACE })).toMatchObject(no);
    expect(createContact(context, { customerId: 1, ...PERSON })).toMatchObject(no);
    expect(changeContact(context, { contactId: 1, version: 1, ...PERSON })).toMatchObject(no);
    expect(putAway(context, { kind: 'customer', id: 1, archived: 'yes' })).toMatchObject(no);
    expect(linkSite(context, { enquiryId: 1, site_id: 1, version: 1 })).toMatchObject(no);
  });
});

describe('contacts and sites', () => {
  it('are refused with a reason', async () => {
    const { context, customerId } = await withCustomer();
    expect(createContact(context, { customerId, ...PERSON, name: '' })).toMatchObject(refused('name-missing'));
    expect(createContact(context, { customerId, ...PERSON, email: 'edda' })).toMatchObject(refused('email-unreadable'));
    expect(createContact(context, { customerId, ...PERSON, site_id: 1 })).toMatchObject(refused('no-such-site'));
    expect(createContact(context, { customerId: 999, ...PERSON })).toMatchObject(refused('no-such-customer'));
    expect(changeContact(context, { contactId: 999, version: 1, ...PERSON })).toMatchObject(refused('no-such-contact'));
    expect(createSite(context, { customerId, ...PLACE, name: '' })).toMatchObject(refused('name-missing'));
    expect(createSite(context, { customerId, ...PLACE, facts: { zone: 2 } })).toMatchObject(refused('site-unreadable'));
    expect(createSite(context, { customerId: 999, ...PLACE })).toMatchObject(refused('no-such-customer'));
    expect(changeSite(context, { siteId: 999, version: 1, ...PLACE })).toMatchObject(refused('no-such-site'));
    const { id } = granted(createContact(context, { customerId, ...PERSON }));
    granted(changeContact(context, { contactId: id, version: 1, ...PERSON, position: 'Locks' }));
    expect(changeContact(context, { contactId: id, version: 1, ...PERSON })).toMatchObject(
      refused('changed-meanwhile'),
    );
    const site = granted(createSite(context, { customerId, ...PLACE }));
    granted(changeSite(context, { siteId: site.id, version: 1, ...PLACE, address: 'East bank' }));
    expect(changeSite(context, { siteId: site.id, version: 1, ...PLACE })).toMatchObject(refused('changed-meanwhile'));
  });
});

describe('an enquiry and its site', () => {
  it('works from its own copy, is told of what changed at the site, and takes it over with its dates kept', async () => {
    const { context, customerId } = await withCustomer();
    const site = granted(createSite(context, { customerId, ...PLACE }));
    const { id } = granted(
      createEnquiry(context, { title: 'Locks', customer: { id: customerId }, site: { days: 4 }, site_id: site.id }),
    );
    const link = () => granted(openEnquiryLife(context, id)).siteLink;
    expect(link()).toMatchObject({ changedSince: 'no', differences: [] });
    granted(
      changeSite(context, { siteId: site.id, version: 1, ...PLACE, facts: { sources_allowed: ['air'], zone: '2' } }),
    );
    expect(granted(readEnquiry(context, id)).site.sourcesAllowed).toEqual(['battery']);
    expect(link()).toMatchObject({
      changedSince: 'yes',
      differences: [
        { key: 'sources_allowed', here: 'battery', there: 'air' },
        { key: 'zone', here: '', there: '2' },
      ],
    });
    granted(linkSite(context, { enquiryId: id, site_id: site.id, version: 1 }));
    expect(granted(readEnquiry(context, id)).site).toMatchObject({ sourcesAllowed: ['air'], zone: '2', days: 4 });
    expect(link()?.changedSince).toBe('no');
    expect(linkSite(context, { enquiryId: id, site_id: site.id, version: 1 })).toMatchObject(
      refused('changed-meanwhile'),
    );
    granted(linkSite(context, { enquiryId: id, site_id: null, version: 2 }));
    expect(link()).toBe(null);
    expect(granted(readEnquiry(context, id)).site.zone).toBe('2');
  });

  it('takes no site and no contact of another customer', async () => {
    const { context, customerId } = await withCustomer();
    const open = { title: 'Locks', customer: { id: customerId }, site: {} };
    expect(createEnquiry(context, { ...open, site_id: 1 })).toMatchObject(refused('no-such-site'));
    expect(createEnquiry(context, { ...open, contact_id: 1 })).toMatchObject(refused('no-such-contact'));
    const { id } = granted(createEnquiry(context, open));
    expect(linkSite(context, { enquiryId: id, site_id: 1, version: 1 })).toMatchObject(refused('no-such-site'));
    expect(linkSite(context, { enquiryId: 999, site_id: 1, version: 1 })).toMatchObject(refused('no-such-enquiry'));
  });
});

describe('a rule of the customer', () => {
  it('makes earlier plans out of date, keeps equipment out, and is named as the customer’s', async () => {
    const context = await demoHouseContext();
    const board = granted(listCustomers(context)).find(({ code }) => code === 'C-1007')?.id ?? 0;
    const input = () => granted(prepareInput(context, 1));
    const before = input();
    const rule = { id: 'quiet', kind: 'no-source', value: 'battery', sentence: 'No battery drive near the wells.' };
    granted(changeCustomer(context, { customerId: board, version: 1, facts: { house_rules: [rule] } }));
    const after = input();
    expect(after.hash).not.toBe(before.hash);
    const drive = after.input.models.find((model) => model.role === 'drive' && model.facts.power.kind === 'battery');
    const line = context.database.raw.prepare('SELECT min(id) FROM schedule_line WHERE enquiry_id = 1').pluck().get();
    const why = JSON.stringify(
      granted(whyPart(context, { enquiryId: 1, lineId: Number(line), part: drive?.number ?? '' })),
    );
    expect(why).toContain('Rule of Sallow Vale Water Board: No battery drive near the wells.');
    granted(
      changeCustomer(context, { customerId: board, version: 2, facts: { house_rules: [{ ...rule, off: true }] } }),
    );
    expect(input().hash).toBe(before.hash);
  });
});
