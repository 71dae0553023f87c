import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { listBands } from '#lib/services/customers/list-customers.ts';
import { CustomerForm } from '../customer-form.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'New customer' };

export default async function NewCustomerPage() {
  const bands = listBands(await asking());
  if (!bands.ok) return <p className="notice refusal">{bands.reason.sentence}</p>;
  return (
    <>
      <h1>New customer</h1>
      <CustomerForm bands={bands.value} />
    </>
  );
}
