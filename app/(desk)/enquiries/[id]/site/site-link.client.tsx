'use client';

import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { EnquiryLifeView } from '#lib/services/enquiries/open-enquiry-life.ts';

interface SiteLinkProps {
  readonly enquiryId: number;
  readonly version: number;
  readonly customerId: number;
  readonly link: EnquiryLifeView['siteLink'];
  readonly sites: EnquiryLifeView['sites'];
}

/** Where the facts below were copied from, what has changed there since, and the copy taken anew. */
export function SiteLink({ enquiryId, version, customerId, link, sites }: SiteLinkProps) {
  const router = useRouter();
  const [trouble, setTrouble] = useState('');

  async function take(siteId: number | null): Promise<void> {
    const body = { version, site_id: siteId };
    const sent = await send({ method: 'POST', path: `/api/v1/enquiries/${enquiryId}/site`, body });
    setTrouble(sent.ok ? '' : sent.sentence);
    if (sent.ok) router.refresh();
  }

  const alert = trouble !== '' && (
    <p className="notice refusal" role="alert">
      {trouble}
    </p>
  );
  if (link === null) {
    return (
      <div className="panel">
        {alert}
        {sites.length === 0 ? (
          <p className="soft">
            These facts were typed here.{' '}
            <Link href={`/customers/${customerId}/sites/new`}>Make a site of the customer</Link> to use them again.
          </p>
        ) : (
          <ChooseSite sites={sites} take={take} />
        )}
      </div>
    );
  }
  return (
    <div className={link.changedSince === 'yes' && link.differences.length > 0 ? 'notice warning' : 'panel'}>
      {alert}
      <p>
        Copied from the site <Link href={`/customers/${customerId}/sites/${link.id}`}>{link.name}</Link>.{' '}
        {link.differences.length === 0
          ? 'All is as it stands there.'
          : link.changedSince === 'yes'
            ? 'The site was changed since; this enquiry still works with its own copy.'
            : 'Some facts were changed here.'}
      </p>
      {link.differences.length > 0 && (
        <ul>
          {link.differences.map(({ key, here, there }) => (
            <li key={key}>
              {key.replaceAll('_', ' ')}: here {here === '' ? 'not known' : here}, at the site{' '}
              {there === '' ? 'not known' : there}
            </li>
          ))}
        </ul>
      )}
      <p className="tools">
        {link.differences.length > 0 && (
          <button type="button" onClick={() => take(link.id)}>
            Take the site’s facts over
          </button>
        )}
        <button type="button" onClick={() => take(null)}>
          Let go of the site
        </button>
      </p>
    </div>
  );
}

function ChooseSite({
  sites,
  take,
}: {
  readonly sites: SiteLinkProps['sites'];
  readonly take: (siteId: number) => Promise<void>;
}) {
  async function submit(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    await take(Number(new FormData(event.currentTarget).get('site')));
  }
  return (
    <form className="tools" onSubmit={submit} style={{ margin: 0 }}>
      <div>
        <label htmlFor="link-site">A site of the customer</label>
        <select id="link-site" name="site">
          {sites.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <button type="submit">Take its facts over</button>
      <small>They replace what stands below; dates, days and crews stay.</small>
    </form>
  );
}
