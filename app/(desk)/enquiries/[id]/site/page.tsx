import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { openEnquiry } from '#lib/services/open-enquiry.ts';
import { SiteForm } from './site-form.client.tsx';

export const dynamic = 'force-dynamic';

export default async function SitePage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const enquiry = openEnquiry(await asking(), idOf((await params).id));
  if (!enquiry.ok) notFound();
  const { id, version, siteJson, site, log } = enquiry.value;
  return (
    <>
      <SiteForm enquiryId={id} version={version} site={{ starts_on: site.startsOn, ...siteJson }} />
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
