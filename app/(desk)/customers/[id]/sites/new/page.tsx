import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { SiteRecordForm } from '../site-record-form.client.tsx';

export const dynamic = 'force-dynamic';

export default async function NewSitePage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const customer = openCustomer(await asking(), idOf((await params).id));
  if (!customer.ok) notFound();
  return <SiteRecordForm customerId={customer.value.id} />;
}
