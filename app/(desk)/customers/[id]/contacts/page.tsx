import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { ContactList } from './contact-list.client.tsx';

export const dynamic = 'force-dynamic';

export default async function ContactsPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const customer = openCustomer(await asking(), idOf((await params).id));
  if (!customer.ok) notFound();
  const { id, contacts, sites } = customer.value;
  return (
    <ContactList customerId={id} contacts={contacts} sites={sites.map((site) => ({ id: site.id, name: site.name }))} />
  );
}
