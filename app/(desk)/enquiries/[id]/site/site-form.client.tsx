'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { SITE_GROUPS } from './site-fields.ts';
import { SiteInput, siteValuesOf } from './site-input.client.tsx';

interface SiteFormProps {
  readonly enquiryId: number;
  readonly version: number;
  readonly site: Readonly<Record<string, unknown>>;
}

/** The facts of the site; what is left empty is not known and is never filled in silently. */
export function SiteForm({ enquiryId, version, site }: SiteFormProps) {
  const router = useRouter();
  const [trouble, setTrouble] = useState('');
  const [state, setState] = useState('');

  async function submit(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    setState('Saving…');
    const body = { version, site: { ...site, ...siteValuesOf(new FormData(event.currentTarget), SITE_GROUPS) } };
    const sent = await send({ method: 'PATCH', path: `/api/v1/enquiries/${enquiryId}`, body });
    setTrouble(sent.ok ? '' : sent.sentence);
    setState(sent.ok ? 'Saved. Plan again under Kits.' : '');
    if (sent.ok) router.refresh();
  }

  return (
    <form onSubmit={submit}>
      {trouble !== '' && (
        <p className="notice refusal" role="alert">
          {trouble}
        </p>
      )}
      {SITE_GROUPS.map((group) => (
        <fieldset className="panel" key={group.title}>
          <legend>{group.title}</legend>
          <div className="fields">
            {group.fields.map((field) => (
              <SiteInput key={field.key} field={field} value={site[field.key]} />
            ))}
          </div>
        </fieldset>
      ))}
      <p className="tools">
        <button className="main" type="submit">
          Save the site
        </button>
        <span aria-live="polite">{state}</span>
      </p>
    </form>
  );
}
