import { beforeEach, describe, expect, it } from 'vitest';
import { findCustomerByName, listCustomers as listRows } from '#db/queries/customers.ts';
import { type Context, NOBODY } from '#lib/services/context.ts';
import { alikeRecords } from '#lib/services/customers/alike-customers.ts';
import { findCustomers } from '#lib/services/customers/find-customers.ts';
import { listCustomers } from '#lib/services/customers/list-customers.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { changeCustomer } from '#lib/services/customers/save-customer.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { searchHouse } from '#lib/services/enquiries/search-house.ts';
import { handOverOrder } from '#lib/services/self-service/hand-over-order.ts';
import { addValve } from '#lib/services/self-service/order-lines.ts';
import { startOrder } from '#lib/services/self-service/start-order.ts';
import { sendBackOrder, takeOverOrder } from '#lib/services/self-service/take-over.ts';
import { newBookingForm } from '#lib/services/yard/new-booking-form.ts';
import { codeOf, granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { CONTACT } from '#tests/support/houses/known-valve.ts';
import { readRepositoryFile } from '#tests/support/repository.ts';

const ADDRESS = '192.0.2.20';
const SITE = { starts_on: '2026-03-16', days: 5, zone: 'none' };

let desk: Context;
let stranger: Context;
/** The customer under whom a stranger's order stands before they say who they are. */
let nobody: number;
let order: { readonly enquiryId: number; readonly token: string };

const start = () =>
  granted(startOrder(stranger, { language: 'en', address: ADDRESS, site: SITE, title: 'Self-service' }));
const customerOf = (enquiryId: number): number => granted(readEnquiry(desk, enquiryId)).row.customer_id;
const nameOf = (id: number): string => granted(openCustomer(desk, id)).name;

beforeEach(async () => {
  desk = await demoHouseContext();
  stranger = { ...desk, actor: NOBODY };
  order = start();
  nobody = customerOf(order.enquiryId);
});

/** Everywhere that customers are offered or found, whether this one is among them. */
function shown(id: number): Readonly<Record<string, boolean>> {
  const name = nameOf(id);
  const [word = ''] = name.split(/[\s,]/);
  const rows = (words: string) => {
    const first = granted(findCustomers(desk, { words, archived: 'no', page: 1 }));
    const pages = Array.from({ length: first.pages }, (_, index) =>
      granted(findCustomers(desk, { words, archived: 'no', page: index + 1 })),
    );
    return pages.flatMap((page) => page.rows);
  };
  const { groups } = granted(searchHouse(desk, word));
  return {
    list: rows('').some((row) => row.id === id),
    'list by words': rows(word).some((row) => row.id === id),
    search: groups.some(({ kind, entries }) => kind === 'customer' && entries.some((entry) => entry.id === id)),
    'picker of enquiries': granted(listCustomers(desk)).some((row) => row.id === id),
    'picker of bookings': granted(newBookingForm(desk)).customers.includes(name),
    alike: granted(alikeRecords(desk, { kind: 'customer', name })).some((row) => row.id === id),
    'by its name': findCustomerByName(desk.database.db, name)?.id === id,
  };
}

describe('the customer that stands for whoever has not said who they are', () => {
  it('is nowhere offered nor found, whatever it is called, and one for all', () => {
    const total = () => granted(findCustomers(desk, { words: '', archived: 'no', page: 1 })).total;
    expect(total()).toBe(listRows(desk.database.db).filter(({ archived_at }) => archived_at === null).length);
    expect(Object.entries(shown(nobody)).filter(([, is]) => is)).toEqual([]);
    desk.database.raw.prepare("UPDATE customer SET name = 'Oddly called' WHERE id = ?").run(nobody);
    expect(Object.entries(shown(nobody)).filter(([, is]) => is)).toEqual([]);
    expect(customerOf(start().enquiryId)).toBe(nobody);
    desk.database.raw.prepare('UPDATE customer SET placeholder = 0 WHERE id = ?').run(nobody);
    expect(Object.entries(shown(nobody)).filter(([, is]) => !is)).toEqual([]);
    const two = () => desk.database.raw.prepare('UPDATE customer SET placeholder = 1').run();
    expect(two).toThrow(/UNIQUE/);
  });

  it('is known in houses from before by the orders under it, and no firm of that name is', () => {
    const { raw } = desk.database;
    const name = nameOf(nobody);
    raw.prepare('UPDATE customer SET placeholder = 0, name = ? WHERE id IN (1, ?)').run(name, nobody);
    const change = readRepositoryFile('db/migrations/0021_who-is-not-named-yet.sql').split('--> statement-breakpoint');
    raw.exec(change.at(-1) ?? '');
    expect(raw.prepare('SELECT id FROM customer WHERE placeholder').pluck().all()).toEqual([nobody]);
  });

  it('cannot be made into somebody, so that nobody’s orders become a firm’s', () => {
    expect(codeOf(changeCustomer(desk, { customerId: nobody, version: 2, name: 'Quist Pipework' }))).toBe(
      'customer-unnamed',
    );
    expect(nameOf(nobody)).not.toBe('Quist Pipework');
  });

  it('is left by an order that is handed over, for a customer that is found', () => {
    const asked = { token: order.token, address: ADDRESS };
    granted(addValve(stranger, { ...asked, answers: [] }));
    granted(handOverOrder(stranger, { ...asked, contact: CONTACT, which: 'all', message: '' }));
    const own = customerOf(order.enquiryId);
    expect(nameOf(own)).toBe('Quist Pipework');
    expect(Object.entries(shown(own)).filter(([, is]) => !is)).toEqual([]);
  });

  it('is left by an order that the Desk takes over, for one that it can name and that stays', () => {
    granted(takeOverOrder(desk, order.enquiryId));
    const own = customerOf(order.enquiryId);
    expect(nameOf(own)).toMatch(/^Self-service, E-\d+$/);
    expect(Object.entries(shown(own)).filter(([, is]) => !is)).toEqual([]);
    const { version } = granted(openCustomer(desk, own));
    granted(changeCustomer(desk, { customerId: own, version, name: 'Quist, by telephone' }));
    granted(takeOverOrder(desk, order.enquiryId));
    expect(customerOf(order.enquiryId)).toBe(own);
    const { token } = granted(sendBackOrder(desk, order.enquiryId));
    granted(addValve(stranger, { token, address: ADDRESS, answers: [] }));
    granted(handOverOrder(stranger, { token, address: ADDRESS, contact: CONTACT, which: 'all', message: '' }));
    expect(customerOf(order.enquiryId)).toBe(own);
    expect(nameOf(own)).toBe('Quist, by telephone');
    expect(customerOf(start().enquiryId)).toBe(nobody);
  });
});
