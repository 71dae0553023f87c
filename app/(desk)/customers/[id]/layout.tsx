import { notFound } from 'next/navigation';
import type { ReactNode } from 'react';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { openCustomer } from '#lib/services/open-customer.ts';
import { PutAway } from '../put-away.client.tsx';
import { CustomerTabs } from './customer-tabs.client.tsx';

export const dynamic = 'force-dynamic';

interface CustomerLayoutProps {
  readonly children: ReactNode;
  readonly params: Promise<{ readonly id: string }>;
}

export default async function CustomerLayout({ children, params }: CustomerLayoutProps) {
  const customer = openCustomer(await asking(), idOf((await params).id));
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
