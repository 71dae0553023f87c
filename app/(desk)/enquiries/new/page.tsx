import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import type { SearchParams } from '#app/_lib/enquiry-list-address.ts';
import { listCustomers } from '#lib/services/customers/list-customers.ts';
import { NewEnquiryForm } from './new-enquiry.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'New enquiry' };

export default async function NewEnquiryPage({ searchParams }: { readonly searchParams: Promise<SearchParams> }) {
  const customers = listCustomers(await asking());
  if (!customers.ok) return <p className="notice refusal">{customers.reason.sentence}</p>;
  const { customer } = await searchParams;
  const chosen = customers.value.find(({ id }) => String(id) === customer)?.name ?? '';
  return (
    <>
      <h1>New enquiry</h1>
      <NewEnquiryForm customers={customers.value} chosen={chosen} />
    </>
  );
}
