import Link from 'next/link';
import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { RULE_KIND_SPECS } from '#lib/contracts/house-rule-values.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { PutAway } from '../../../put-away.client.tsx';
import { RuleSheet } from '../../../rule-sheet.client.tsx';
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
      <h2>Rules of the site</h2>
      <p className="soft">
        What is asked for at this place, whoever works there. Each keeps equipment out of the plans of enquiries that
        hold it: new ones from the start, those that are there once they take it over.
      </p>
      <RuleSheet
        keptAt={{
          path: `/api/v1/sites/${site.id}`,
          body: { version: site.version, name: site.name, address: site.address, access_note: site.accessNote },
          facts: site.facts,
        }}
        rules={site.rules}
        kinds={RULE_KIND_SPECS}
        none="No rule of its own yet. “No engine in the pump house” or “no clamp on the pipework” is one."
      />
    </>
  );
}
