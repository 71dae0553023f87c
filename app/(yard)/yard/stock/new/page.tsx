import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { newUnitForm } from '#lib/services/stock/new-unit-form.ts';
import { AddUnitForm } from './add-unit.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Add a unit' };

export default async function NewUnitPage() {
  const form = newUnitForm(await asking());
  return (
    <>
      <p>
        <Link href="/yard/stock">Stock</Link>
      </p>
      <h1>Add a unit</h1>
      {form.ok ? <AddUnitForm {...form.value} /> : <p className="notice refusal">{form.reason.sentence}</p>}
    </>
  );
}
