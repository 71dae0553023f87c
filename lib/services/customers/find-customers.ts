/*
 * The customers of the house as a list shows them: found by words, a page at a time.
 * Invariant: reads only; a page beyond the end answers the last page; words are looked for in names, addresses, contacts and sites.
 * Not here: one customer (open-customer.ts).
 * Read next: open-customer.ts.
 */
import { countCustomers, pageOfCustomers } from '#db/queries/customers.ts';
import { customersOfHits, searchIds } from '#db/queries/search.ts';
import type { CustomerFacts } from '#lib/contracts/customer.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { sheetOf } from './customer-facts.ts';

const CUSTOMERS_A_PAGE = 50;
const FOUND_MOST = 20_000;

export interface CustomersAsked {
  readonly words: string;
  readonly archived: 'yes' | 'no';
  /** From 1. */
  readonly page: number;
}

export interface CustomerListView {
  readonly id: number;
  readonly code: string;
  readonly name: string;
  readonly account: CustomerFacts['account'];
  /** The last line of the address: the place. */
  readonly place: string;
  readonly rules: number;
  readonly sites: number;
  readonly contacts: number;
  readonly enquiries: number;
  readonly openEnquiries: number;
}

export interface CustomersFound {
  readonly rows: readonly CustomerListView[];
  readonly total: number;
  readonly page: number;
  readonly pages: number;
  readonly archived: number;
}

export function findCustomers(context: Context, asked: CustomersAsked): Result<CustomersFound> {
  const allowed = authorise(context, 'read customers');
  if (!allowed.ok) return allowed;
  const db = context.database.db;
  const ids = idsFor(context, asked.words.trim());
  const total = countCustomers(db, { ids, archived: asked.archived });
  const pages = Math.max(1, Math.ceil(total / CUSTOMERS_A_PAGE));
  const page = Math.min(Math.max(1, asked.page), pages);
  const from = (page - 1) * CUSTOMERS_A_PAGE;
  return ok({
    rows: pageOfCustomers(db, { ids, archived: asked.archived, from, count: CUSTOMERS_A_PAGE }).map((row) => {
      const sheet = sheetOf(row);
      const { id, code, name, sites, contacts, enquiries, open_enquiries } = row;
      const place = sheet.address.slice(-2).join(', ');
      return {
        ...{ id, code, name, sites, contacts, enquiries, openEnquiries: open_enquiries },
        ...{ account: sheet.account, place, rules: sheet.house_rules.length },
      };
    }),
    ...{ total, page, pages },
    archived: countCustomers(db, { ids, archived: 'yes' }),
  });
}

function idsFor(context: Context, words: string): readonly number[] | null {
  if (words === '') return null;
  const db = context.database.db;
  const idsIn = (source: 'customer' | 'site' | 'contact') => searchIds(db, { words, source, most: FOUND_MOST });
  return [
    ...new Set([
      ...idsIn('customer'),
      ...customersOfHits(db, { source: 'site', ids: idsIn('site') }),
      ...customersOfHits(db, { source: 'contact', ids: idsIn('contact') }),
    ]),
  ];
}
