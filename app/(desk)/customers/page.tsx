import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { pageOf, type SearchParams } from '#app/_lib/enquiry-list-address.ts';
import { Pager } from '#app/_ui/pager.tsx';
import { type CustomersFound, findCustomers } from '#lib/services/customers/find-customers.ts';
import { type CustomersAddress, customersAddress } from './customers-address.ts';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Customers' };

export default async function CustomersPage({ searchParams }: { readonly searchParams: Promise<SearchParams> }) {
  const { q, archived, page } = await searchParams;
  const asked: CustomersAddress = {
    words: typeof q === 'string' ? q.slice(0, 200) : '',
    archived: archived === 'yes' ? 'yes' : 'no',
    page: pageOf(typeof page === 'string' ? page : null),
  };
  const found = findCustomers(await asking(), asked);
  if (!found.ok) return <p className="notice refusal">{found.reason.sentence}</p>;
  return (
    <>
      <div className="heading">
        <h1>Customers</h1>
        <Link className="button main" href="/customers/new">
          New customer
        </Link>
      </div>
      <form className="tools" action="/customers">
        <div>
          <label htmlFor="customer-words">Words</label>
          <input
            id="customer-words"
            name="q"
            type="search"
            defaultValue={asked.words}
            placeholder="name, place, contact, site"
            size={30}
          />
        </div>
        <button type="submit">Show</button>
        <PutAwayLink asked={asked} count={found.value.archived} />
      </form>
      {found.value.rows.length === 0 ? <Nothing asked={asked} /> : <Rows found={found.value} />}
      <Pager
        {...{ page: found.value.page, pages: found.value.pages, total: found.value.total, what: 'customers' }}
        hrefOf={(to) => customersAddress({ ...asked, page: to })}
      />
    </>
  );
}

function PutAwayLink({ asked, count }: { readonly asked: CustomersAddress; readonly count: number }) {
  if (asked.archived === 'yes')
    return <Link href={customersAddress({ ...asked, archived: 'no', page: 1 })}>Those in use</Link>;
  if (count === 0) return null;
  return <Link href={customersAddress({ ...asked, archived: 'yes', page: 1 })}>{count} put away</Link>;
}

function Nothing({ asked }: { readonly asked: CustomersAddress }) {
  return (
    <div className="empty">
      <h2>{asked.words === '' ? 'No customer here' : `No customer for “${asked.words}”`}</h2>
      <p>
        A customer holds its contacts, its sites with what holds there, the terms agreed, and its own rules for every
        plan.
      </p>
      <Link className="button" href={asked.words === '' ? '/customers/new' : '/customers'}>
        {asked.words === '' ? 'New customer' : 'Show all'}
      </Link>
    </div>
  );
}

function Rows({ found }: { readonly found: CustomersFound }) {
  return (
    <div className="wide">
      <table>
        <thead>
          <tr>
            <th>Name</th>
            <th className="wide-only">Place</th>
            <th>Account</th>
            <th className="number wide-only">Sites</th>
            <th className="number wide-only">Contacts</th>
            <th className="number wide-only">Rules</th>
            <th className="number">Open enquiries</th>
          </tr>
        </thead>
        <tbody>
          {found.rows.map((row) => (
            <tr key={row.id}>
              <td>
                <Link href={`/customers/${row.id}`}>{row.name}</Link>
                <small className="beside">{row.code}</small>
              </td>
              <td className="wide-only">{row.place}</td>
              <td>{row.account === 'credit' ? 'credit' : 'deposit'}</td>
              <td className="number wide-only">{row.sites}</td>
              <td className="number wide-only">{row.contacts}</td>
              <td className="number wide-only">{row.rules}</td>
              <td className="number">
                {row.openEnquiries} <small>of {row.enquiries}</small>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
