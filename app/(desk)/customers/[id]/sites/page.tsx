import Link from 'next/link';
import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { openCustomer, type SiteView } from '#lib/services/customers/open-customer.ts';

export const dynamic = 'force-dynamic';

export default async function SitesPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const customer = openCustomer(await asking(), idOf((await params).id));
  if (!customer.ok) notFound();
  const { id, sites } = customer.value;
  return (
    <>
      <p className="tools">
        <Link className="button main" href={`/customers/${id}/sites/new`}>
          New site
        </Link>
      </p>
      {sites.length === 0 ? (
        <div className="empty">
          <h2>No site yet</h2>
          <p>
            A site keeps what holds at a place for every job: power, access, hazardous zone, what may take the reaction.
            An enquiry copies it, and is told when the site changes afterwards.
          </p>
        </div>
      ) : (
        <Sites customerId={id} sites={sites} />
      )}
    </>
  );
}

function Sites({ customerId, sites }: { readonly customerId: number; readonly sites: readonly SiteView[] }) {
  return (
    <div className="wide">
      <table>
        <thead>
          <tr>
            <th>Site</th>
            <th>Power allowed</th>
            <th className="wide-only">Hazardous zone</th>
            <th className="number">Enquiries</th>
          </tr>
        </thead>
        <tbody>
          {sites.map((site) => (
            <tr key={site.id}>
              <td>
                <Link href={`/customers/${customerId}/sites/${site.id}`}>{site.name}</Link>
                {site.archived === 'yes' && <small> put away</small>}
                <small className="beside">{site.address}</small>
              </td>
              <td>{wordsOf(site.facts.sources_allowed) || <span className="soft">not said: all</span>}</td>
              <td className="wide-only">{wordsOf(site.facts.zone) || <span className="soft">not known</span>}</td>
              <td className="number">{site.enquiries}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function wordsOf(fact: unknown): string {
  return Array.isArray(fact) ? fact.join(', ') : fact === undefined ? '' : String(fact);
}
