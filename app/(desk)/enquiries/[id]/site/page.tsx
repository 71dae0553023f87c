import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { openEnquiryLife } from '#lib/services/enquiries/open-enquiry-life.ts';
import { SiteForm } from './site-form.client.tsx';
import { SiteLink } from './site-link.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Site' };

export default async function SitePage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const context = await asking();
  const enquiry = openEnquiry(context, idOf((await params).id));
  const life = openEnquiryLife(context, idOf((await params).id));
  if (!enquiry.ok || !life.ok) notFound();
  const { id, version, siteJson, site, log } = enquiry.value;
  // A site taken over fills the form anew; anything else leaves what is being typed alone.
  const siteKey = `${life.value.siteLink?.id} ${life.value.siteLink?.copied}`;
  return (
    <>
      <SiteLink
        {...{ enquiryId: id, version, customerId: life.value.customerId }}
        {...{ link: life.value.siteLink, sites: life.value.sites }}
      />
      <SiteForm key={siteKey} enquiryId={id} version={version} site={{ starts_on: site.startsOn, ...siteJson }} />
      <details className="panel">
        <summary>Who did what ({log.length})</summary>
        <ul>
          {log.map((entry) => (
            <li key={`${entry.at} ${entry.action}`}>
              {entry.at.slice(0, 16).replace('T', ' ')} · {entry.who} · {entry.action}
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}
