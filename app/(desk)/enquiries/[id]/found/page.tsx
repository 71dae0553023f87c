import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { PlanRefused } from '#app/_ui/plan/plan-refused.tsx';
import { openVisits } from '#lib/services/visits/open-visits.ts';
import { FoundImport } from './found-import.client.tsx';
import { FoundSheet } from './found-sheet.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'As found' };

/** What the site sheet’s blanks say, typed in or taken from a list. */
export default async function FoundPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const enquiryId = idOf((await params).id);
  const opened = openVisits(await asking(), enquiryId);
  if (!opened.ok) return <PlanRefused sentence={opened.reason.sentence} />;
  const { valves, site, under, today } = opened.value;
  return (
    <section aria-labelledby="found">
      <h2 id="found">As found</h2>
      <p>
        What the crew wrote on the site sheet, in its working order. The next enquiry of this customer for{' '}
        {site === '' ? 'this site' : `“${site}”`} takes it as measured, valve by valve. Kept under {under}.
      </p>
      {site === '' ? (
        <p className="notice refusal">
          The site has no name yet: give it one under <a href={`/enquiries/${enquiryId}/site`}>Site</a>, so that its
          valves are found again.
        </p>
      ) : null}
      <FoundImport enquiryId={enquiryId} />
      {valves.length === 0 ? (
        <p className="empty">No line has a tag yet.</p>
      ) : (
        <FoundSheet enquiryId={enquiryId} valves={valves} today={today} />
      )}
    </section>
  );
}
