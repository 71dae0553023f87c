'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { Trouble } from '#app/_ui/trouble.tsx';
import type { EnquiryLifeView } from '#lib/services/enquiries/open-enquiry-life.ts';
import { ENQUIRY_SOURCES } from '../../enquiry-sources.ts';

/** What the customer calls it, how it came, and whom to ask. */
export function AboutForm({ life }: { readonly life: EnquiryLifeView }) {
  const router = useRouter();
  const [state, setState] = useState('');
  const [trouble, setTrouble] = useState('');
  const { reference, source, contact_id } = life;
  // What this form was filled from. After a conflict it is what stands there now: saving again is then a choice.
  const [seen, setSeen] = useState<Partial<typeof life> | null>({ reference, source, contact_id });

  async function submit(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const contact = Number(form.get('contact'));
    const set = {
      reference: String(form.get('reference') ?? '').trim(),
      source: String(form.get('source') ?? ''),
      contact_id: contact === 0 ? null : contact,
    };
    const was = seen ?? { reference, source, contact_id };
    const body = { set, was };
    const sent = await send({ method: 'PATCH', path: `/api/v1/enquiries/${life.id}/life`, body });
    setTrouble(sent.ok ? '' : sent.sentence);
    setState(sent.ok ? 'Saved.' : '');
    setSeen(sent.ok ? set : null);
    router.refresh();
  }

  const reach = life.contacts.find(({ id }) => id === contact_id)?.reach ?? '';
  return (
    <form className="panel" onSubmit={submit} aria-labelledby="about">
      <h2 id="about">About it</h2>
      <Trouble sentence={trouble} />
      <div className="fields">
        <div>
          <label htmlFor="about-reference">The customer’s reference</label>
          <input id="about-reference" name="reference" defaultValue={reference} maxLength={200} />
          <small className="field-help">It is printed on the papers.</small>
        </div>
        <div>
          <label htmlFor="about-source">How it came</label>
          <select id="about-source" name="source" defaultValue={source}>
            <option value="">not said</option>
            {ENQUIRY_SOURCES.map((way) => (
              <option key={way}>{way}</option>
            ))}
          </select>
        </div>
        <div>
          <label htmlFor="about-contact">Whom to ask</label>
          <select id="about-contact" name="contact" defaultValue={contact_id ?? 0}>
            <option value={0}>nobody named</option>
            {life.contacts.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
          {reach !== '' && <small className="field-help">{reach}</small>}
        </div>
      </div>
      <p className="tools" style={{ marginTop: 'var(--space-3)' }}>
        <button type="submit">Save</button>
        <span aria-live="polite">{state}</span>
      </p>
    </form>
  );
}
