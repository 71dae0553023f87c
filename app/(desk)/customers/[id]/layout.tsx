import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { cache, type ReactNode } from 'react';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { PutAway } from '../put-away.client.tsx';
import { CustomerTabs } from './customer-tabs.client.tsx';

export const dynamic = 'force-dynamic';

interface CustomerLayoutProps {
  readonly children: ReactNode;
  readonly params: Promise<{ readonly id: string }>;
}

/** Title and heading ask for the same customer: it is opened once a request. */
const customerOf = cache(async (id: string) => openCustomer(await asking(), idOf(id)));

export async function generateMetadata({ params }: Pick<CustomerLayoutProps, 'params'>): Promise<Metadata> {
  const customer = await customerOf((await params).id);
  if (!customer.ok) return {};
  const { name } = customer.value;
  return { title: { default: `${name} · Kitwright`, template: `%s · ${name} · Kitwright` } };
}

export default async function CustomerLayout({ children, params }: CustomerLayoutProps) {
  const customer = await customerOf((await params).id);
  if (!customer.ok) notFound();
  const { id, code, name, archived } = customer.value;
  return (
    <>
      <div className="heading">
        <h1>{name}</h1>
        <div className="tools">
          <small>{code}</small>
          <PutAway kind="customer" id={id} archived={archived} />
        </div>
      </div>
      {archived === 'yes' && (
        <p className="notice warning">This customer is put away: it is kept, and not offered for new enquiries.</p>
      )}
      <CustomerTabs id={id} />
      {children}
    </>
  );
}
