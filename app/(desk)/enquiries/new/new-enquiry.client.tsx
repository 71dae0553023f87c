'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { Trouble } from '#app/_ui/trouble.tsx';
import type { CustomerView } from '#lib/services/customers/list-customers.ts';
import { AlreadyHere } from '../../customers/already-here.client.tsx';
import { ENQUIRY_SOURCES } from '../enquiry-sources.ts';
import { useCustomerPlaces } from './use-customer-places.client.tsx';

interface NewEnquiryFormProps {
  readonly customers: readonly CustomerView[];
  /** Name of the customer from whose page one came; empty otherwise. */
  readonly chosen: string;
}

export function NewEnquiryForm({ customers, chosen }: NewEnquiryFormProps) {
  const router = useRouter();
  const [trouble, setTrouble] = useState('');
  const [busy, setBusy] = useState(false);
  const [name, setName] = useState(chosen);
  const known = customers.find((customer) => customer.name.toLowerCase() === name.trim().toLowerCase());

  async function submit(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    setBusy(true);
    const sent = await send<{ readonly id: number }>({
      method: 'POST',
      path: '/api/v1/enquiries',
      body: enquiryBody(form, known),
    });
    setBusy(false);
    if (sent.ok) router.push(`/enquiries/${sent.value.id}/list`);
    else setTrouble(sent.sentence);
  }

  return (
    <form className="panel" onSubmit={submit}>
      <Trouble sentence={trouble} />
      <div className="fields">
        <div>
          <label htmlFor="title">Place or job</label>
          <input id="title" name="title" required maxLength={200} />
        </div>
        <div>
          <label htmlFor="customer">Customer</label>
          <input
            id="customer"
            name="customer"
            list="customers"
            required
            maxLength={200}
            autoComplete="off"
            value={name}
            onChange={(event) => setName(event.target.value)}
          />
          <small className="field-help">A known one, or a new name.</small>
          <datalist id="customers">
            {customers.map((customer) => (
              <option key={customer.id} value={customer.name} />
            ))}
          </datalist>
        </div>
        <PlaceFields customerId={known?.id ?? null} />
        <JobFields />
      </div>
      {known === undefined && <AlreadyHere kind="customer" typed={{ name }} />}
      <p className="tools" style={{ marginTop: 'var(--space-4)' }}>
        <button className="main" type="submit" disabled={busy}>
          {busy ? 'Opening…' : 'Open the enquiry'}
        </button>
        <label>
          <input type="checkbox" name="mine" /> It is my work
        </label>
      </p>
    </form>
  );
}

/** The site and the person, where the customer is known and has some. */
function PlaceFields({ customerId }: { readonly customerId: number | null }) {
  const { sites, contacts } = useCustomerPlaces(customerId);
  return (
    <>
      {sites.length > 0 && (
        <div>
          <label htmlFor="site">Site of theirs</label>
          <select id="site" name="site">
            <option value="">another place</option>
            {sites.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
          <small className="field-help">What holds there is copied.</small>
        </div>
      )}
      {contacts.length > 0 && (
        <div>
          <label htmlFor="contact">Whom to ask</label>
          <select id="contact" name="contact">
            <option value="">nobody named</option>
            {contacts.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </div>
      )}
    </>
  );
}

function JobFields() {
  return (
    <>
      <div>
        <label htmlFor="crews">Crews</label>
        <input id="crews" name="crews" type="number" min={1} max={12} defaultValue={1} />
      </div>
      <div>
        <label htmlFor="days">Days</label>
        <input id="days" name="days" type="number" min={1} max={366} defaultValue={5} />
      </div>
      <div>
        <label htmlFor="starts">First day of the hire</label>
        <input id="starts" name="starts" type="date" />
        <small className="field-help">Today, if left open.</small>
      </div>
      <div>
        <label htmlFor="due">Answer due on</label>
        <input id="due" name="due" type="date" />
      </div>
      <div>
        <label htmlFor="reference">Their reference</label>
        <input id="reference" name="reference" maxLength={200} autoComplete="off" />
      </div>
      <div>
        <label htmlFor="source">How it came</label>
        <select id="source" name="source">
          <option value="">not said</option>
          {ENQUIRY_SOURCES.map((way) => (
            <option key={way}>{way}</option>
          ))}
        </select>
      </div>
    </>
  );
}

/** What the form says: a known customer by id, another by name; what is left open is not sent. */
function enquiryBody(form: FormData, known: CustomerView | undefined) {
  const text = (field: string): string => String(form.get(field) ?? '').trim();
  const said = (key: string, field: string) => (text(field) === '' ? {} : { [key]: text(field) });
  const numbered = (key: string, field: string) => (text(field) === '' ? {} : { [key]: Number(text(field)) });
  const site = text('site');
  return {
    title: text('title'),
    customer: known ? { id: known.id } : { name: text('customer') },
    ...numbered('site_id', 'site'),
    ...numbered('contact_id', 'contact'),
    ...said('reference', 'reference'),
    ...said('source', 'source'),
    ...said('due_on', 'due'),
    mine: form.get('mine') === null ? 'no' : 'yes',
    site: {
      ...(site === '' ? { name: text('title') } : {}),
      days: Number(text('days')),
      crews: Number(text('crews')),
      ...said('starts_on', 'starts'),
    },
  };
}
