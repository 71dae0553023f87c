import Link from 'next/link';
import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { PutAway } from '../../../put-away.client.tsx';
import { SiteRecordForm } from '../site-record-form.client.tsx';

export const dynamic = 'force-dynamic';

interface SiteParams {
  readonly params: Promise<{ readonly id: string; readonly siteId: string }>;
}

export default async function SiteRecordPage({ params }: SiteParams) {
  const { id, siteId } = await params;
  const customer = openCustomer(await asking(), idOf(id));
  const site = customer.ok ? customer.value.sites.find((one) => one.id === idOf(siteId)) : undefined;
  if (!customer.ok || site === undefined) notFound();
  return (
    <>
      <div className="heading">
        <h2 style={{ margin: 0 }}>{site.name}</h2>
        <div className="tools">
          <Link href={`/enquiries?state=all&customer=${customer.value.id}&site=${site.id}`}>
            {site.enquiries} {site.enquiries === 1 ? 'enquiry' : 'enquiries'}
          </Link>
          <PutAway kind="site" id={site.id} archived={site.archived} />
        </div>
      </div>
      <p className="soft">
        Enquiries keep a copy of their own. What is changed here reaches one when it is taken over on its page Site.
      </p>
      <SiteRecordForm key={site.version} customerId={customer.value.id} site={site} />
    </>
  );
}
