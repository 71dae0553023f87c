import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { enquiryAddress, readEnquiryAddress, type SearchParams } from '#app/_lib/enquiry-list-address.ts';
import { Pager } from '#app/_ui/pager.tsx';
import { listDeskPeople } from '#lib/services/access/list-desk-people.ts';
import { nameOfCustomer } from '#lib/services/customers/list-customers.ts';
import { findEnquiries } from '#lib/services/enquiries/find-enquiries.ts';
import { EnquiryFilters } from './enquiry-filters.tsx';
import { EnquiryRows } from './enquiry-rows.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Enquiries' };

export default async function EnquiriesPage({ searchParams }: { readonly searchParams: Promise<SearchParams> }) {
  const asked = readEnquiryAddress(await searchParams);
  const context = await asking();
  const found = findEnquiries(context, asked);
  if (!found.ok) return <p className="notice refusal">{found.reason.sentence}</p>;
  const people = listDeskPeople(context);
  const customer = asked.customerId === null ? '' : nameOfCustomer(context, asked.customerId);
  return (
    <>
      <div className="heading">
        <h1>Enquiries</h1>
        <Link className="button main" href="/enquiries/new">
          New enquiry
        </Link>
      </div>
      <EnquiryFilters asked={asked} found={found.value} people={people.ok ? people.value : []} customer={customer} />
      {found.value.rows.length === 0 ? (
        <Nothing all={found.value.counts.all ?? 0} />
      ) : (
        <>
          <EnquiryRows found={found.value} asked={asked} />
          <Pager
            {...{ page: found.value.page, pages: found.value.pages, total: found.value.total, what: 'enquiries' }}
            hrefOf={(page) => enquiryAddress({ asked, change: { page } })}
          />
        </>
      )}
    </>
  );
}

function Nothing({ all }: { readonly all: number }) {
  return (
    <div className="empty">
      <h2>{all === 0 ? 'No enquiry here' : 'None in this state'}</h2>
      <p>
        {all === 0
          ? 'An enquiry is what a customer asks for: a list of valves, a place and some days. Open one, then take in the list; or look with fewer words.'
          : `There are ${all} in other states: choose “all” above.`}
      </p>
      <Link className="button" href={all === 0 ? '/enquiries/new' : '/enquiries?state=all'}>
        {all === 0 ? 'New enquiry' : 'Show all'}
      </Link>
    </div>
  );
}
