'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { Trouble } from '#app/_ui/trouble.tsx';
import type { ContactView } from '#lib/services/customers/open-customer.ts';
import { AlreadyHere } from '../../already-here.client.tsx';
import { typedIdentity } from '../../typed.ts';

interface ContactFormProps {
  readonly customerId: number;
  readonly sites: readonly { readonly id: number; readonly name: string }[];
  /** Absent for a new one. */
  readonly contact?: ContactView;
  readonly close: () => void;
}

const FIELDS = [
  { key: 'name', label: 'Name' },
  { key: 'position', label: 'What they do there' },
  { key: 'email', label: 'Mail' },
  { key: 'telephone', label: 'Telephone' },
  { key: 'note', label: 'Note' },
] as const;

export function ContactForm({ customerId, sites, contact, close }: ContactFormProps) {
  const router = useRouter();
  const [trouble, setTrouble] = useState('');
  const [typed, setTyped] = useState({ name: contact?.name ?? '', email: '', telephone: '' });

  async function submit(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const site = Number(form.get('site'));
    const entry = {
      ...Object.fromEntries(FIELDS.map(({ key }) => [key, String(form.get(key) ?? '')])),
      site_id: site === 0 ? null : site,
    };
    const sent = await send(
      contact === undefined
        ? { method: 'POST', path: `/api/v1/customers/${customerId}/contacts`, body: entry }
        : { method: 'PATCH', path: `/api/v1/contacts/${contact.id}`, body: { ...entry, version: contact.version } },
    );
    if (!sent.ok) return setTrouble(sent.sentence);
    close();
    router.refresh();
  }

  return (
    <form
      className="panel"
      onSubmit={submit}
      aria-label={contact === undefined ? 'New contact' : `Contact ${contact.name}`}
      onChange={(event) => setTyped(typedIdentity(new FormData(event.currentTarget)))}
    >
      <Trouble sentence={trouble} />
      <div className="fields">
        {FIELDS.map(({ key, label }) => (
          <div key={key}>
            <label htmlFor={`contact-${key}`}>{label}</label>
            <input
              id={`contact-${key}`}
              name={key}
              required={key === 'name'}
              maxLength={200}
              autoComplete="off"
              defaultValue={contact?.[key] ?? ''}
            />
          </div>
        ))}
        <div>
          <label htmlFor="contact-site">Site</label>
          <select id="contact-site" name="site" defaultValue={contact?.siteId ?? 0}>
            <option value={0}>all of them</option>
            {sites.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </div>
      </div>
      <AlreadyHere kind="contact" typed={typed} {...(contact === undefined ? {} : { self: contact.id })} />
      <p className="tools" style={{ marginTop: 'var(--space-3)' }}>
        <button className="main" type="submit">
          {contact === undefined ? 'Make the contact' : 'Save'}
        </button>
        <button type="button" onClick={close}>
          Leave it
        </button>
      </p>
    </form>
  );
}
