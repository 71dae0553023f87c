'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { CustomerView } from '#lib/services/list-customers.ts';

export function NewEnquiryForm({ customers }: { readonly customers: readonly CustomerView[] }) {
  const router = useRouter();
  const [trouble, setTrouble] = useState('');
  const [busy, setBusy] = useState(false);

  async function submit(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    setBusy(true);
    const sent = await send<{ readonly id: number }>({
      method: 'POST',
      path: '/api/v1/enquiries',
      body: enquiryBody(form, customers),
    });
    setBusy(false);
    if (sent.ok) router.push(`/enquiries/${sent.value.id}/list`);
    else setTrouble(sent.sentence);
  }

  return (
    <form className="panel" onSubmit={submit}>
      {trouble !== '' && (
        <p className="notice refusal" role="alert">
          {trouble}
        </p>
      )}
      <div className="fields">
        <div>
          <label htmlFor="title">Place or job</label>
          <input id="title" name="title" required maxLength={200} />
        </div>
        <div>
          <label htmlFor="customer">Customer (a known one, or a new name)</label>
          <input id="customer" name="customer" list="customers" required maxLength={200} autoComplete="off" />
          <datalist id="customers">
            {customers.map((customer) => (
              <option key={customer.id} value={customer.name} />
            ))}
          </datalist>
        </div>
        <div>
          <label htmlFor="crews">Crews</label>
          <input id="crews" name="crews" type="number" min={1} max={12} defaultValue={1} />
        </div>
        <div>
          <label htmlFor="days">Days</label>
          <input id="days" name="days" type="number" min={1} max={366} defaultValue={5} />
        </div>
        <div>
          <label htmlFor="starts">First day of the hire (today if left open)</label>
          <input id="starts" name="starts" type="date" />
        </div>
      </div>
      <p className="tools" style={{ marginTop: 'var(--space-4)' }}>
        <button className="main" type="submit" disabled={busy}>
          {busy ? 'Opening…' : 'Open the enquiry'}
        </button>
      </p>
    </form>
  );
}

/** What the form says: a known customer by id, another by name; no first day where none is given. */
function enquiryBody(form: FormData, customers: readonly CustomerView[]) {
  const text = (field: string): string => String(form.get(field) ?? '').trim();
  const name = text('customer');
  const known = customers.find((customer) => customer.name.toLowerCase() === name.toLowerCase());
  const starts = text('starts');
  return {
    title: text('title'),
    customer: known ? { id: known.id } : { name },
    site: {
      name: text('title'),
      days: Number(text('days')),
      crews: Number(text('crews')),
      ...(starts === '' ? {} : { starts_on: starts }),
    },
  };
}
