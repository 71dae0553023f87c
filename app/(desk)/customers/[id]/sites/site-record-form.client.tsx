'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { Trouble } from '#app/_ui/trouble.tsx';
import type { SiteView } from '#lib/services/customers/open-customer.ts';
import { SITE_GROUPS } from '../../../enquiries/[id]/site/site-fields.ts';
import { SiteInput, siteValuesOf } from '../../../enquiries/[id]/site/site-input.client.tsx';
import { AlreadyHere } from '../../already-here.client.tsx';

interface SiteRecordFormProps {
  readonly customerId: number;
  /** Absent for a new one. */
  readonly site?: SiteView;
}

/** What belongs to one job stands on the enquiry. */
const OF_THE_JOB = ['name', 'starts_on', 'days', 'crews', 'operated'];

const GROUPS = SITE_GROUPS.map((group) => ({
  ...group,
  fields: group.fields.filter(({ key }) => !OF_THE_JOB.includes(key)),
}));

export function SiteRecordForm({ customerId, site }: SiteRecordFormProps) {
  const router = useRouter();
  const [trouble, setTrouble] = useState('');
  const [name, setName] = useState(site?.name ?? '');

  async function submit(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const entry = {
      name,
      address: String(form.get('address') ?? ''),
      access_note: String(form.get('access_note') ?? ''),
      facts: { ...site?.facts, ...siteValuesOf(form, GROUPS) },
    };
    const sent = await send(
      site === undefined
        ? { method: 'POST', path: `/api/v1/customers/${customerId}/sites`, body: entry }
        : { method: 'PATCH', path: `/api/v1/sites/${site.id}`, body: { ...entry, version: site.version } },
    );
    if (!sent.ok) return setTrouble(sent.sentence);
    router.push(`/customers/${customerId}/sites`);
    router.refresh();
  }

  return (
    <form onSubmit={submit} aria-label={site === undefined ? 'New site' : `Site ${site.name}`}>
      <Trouble sentence={trouble} />
      <fieldset className="panel">
        <legend>{site === undefined ? 'New site' : 'Where it is'}</legend>
        <div className="fields">
          <div>
            <label htmlFor="site-name">Name of the site</label>
            <input
              id="site-name"
              value={name}
              required
              maxLength={200}
              autoComplete="off"
              onChange={(event) => setName(event.target.value)}
            />
            <small className="field-help">Visits are found again by it.</small>
          </div>
          <div>
            <label htmlFor="site-address">Address</label>
            <textarea id="site-address" name="address" rows={3} defaultValue={site?.address} />
          </div>
          <div>
            <label htmlFor="site-access">Getting in</label>
            <textarea id="site-access" name="access_note" rows={3} defaultValue={site?.accessNote} />
            <small className="field-help">Gate, hours, whom to report to.</small>
          </div>
        </div>
      </fieldset>
      <AlreadyHere
        kind="site"
        typed={{ name }}
        customerId={customerId}
        {...(site === undefined ? {} : { self: site.id })}
      />
      <PlaceFacts facts={site?.facts ?? {}} />
      <p className="tools">
        <button className="main" type="submit">
          {site === undefined ? 'Make the site' : 'Save the site'}
        </button>
      </p>
    </form>
  );
}

function PlaceFacts({ facts }: { readonly facts: Readonly<Record<string, unknown>> }) {
  return GROUPS.map((group) => (
    <fieldset className="panel" key={group.title}>
      <legend>{group.title}</legend>
      <div className="fields">
        {group.fields.map((field) => (
          <SiteInput key={field.key} field={field} value={facts[field.key]} />
        ))}
      </div>
    </fieldset>
  ));
}
