import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { listKeys } from '#lib/services/self-service/open-key.ts';
import { KeyList } from './key-list.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Programs' };

export default async function KeysPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const context = await asking();
  const customerId = idOf((await params).id);
  const keys = listKeys(context, customerId);
  if (!keys.ok) return <p className="notice refusal">{keys.reason.sentence}</p>;
  return (
    <>
      <h2>Programs of this customer</h2>
      <p>
        With a key a program of the customer asks for kits and prices and orders them, for this customer only. What it
        may send and gets back is described at <a href="/api/v1/openapi.json">/api/v1/openapi.json</a>.
      </p>
      <KeyList customerId={customerId} keys={keys.value} />
    </>
  );
}
