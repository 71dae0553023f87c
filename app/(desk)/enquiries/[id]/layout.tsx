import { notFound } from 'next/navigation';
import type { ReactNode } from 'react';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { dateText } from '#lib/documents/print-values.ts';
import { openEnquiry } from '#lib/services/open-enquiry.ts';
import { newestChange } from '#lib/services/read-changes.ts';
import { EnquiryTabs } from './enquiry-tabs.client.tsx';
import { LiveEnquiry } from './live-enquiry.client.tsx';
import { OutdatedNotice } from './outdated-notice.client.tsx';

export const dynamic = 'force-dynamic';

interface EnquiryLayoutProps {
  readonly children: ReactNode;
  readonly params: Promise<{ readonly id: string }>;
}

export default async function EnquiryLayout({ children, params }: EnquiryLayoutProps) {
  const context = await asking();
  const enquiry = openEnquiry(context, idOf((await params).id));
  if (!enquiry.ok) notFound();
  const newest = newestChange(context, enquiry.value.id);
  const { id, number, title, customer, state, site } = enquiry.value;
  return (
    <>
      <div className="heading">
        <h1>
          {number} · {title}
        </h1>
        <small>
          {customer.name} · {state} · {site.crews} {site.crews === 1 ? 'crew' : 'crews'}, {site.days}{' '}
          {site.days === 1 ? 'day' : 'days'} from {dateText(site.startsOn)}
        </small>
      </div>
      <EnquiryTabs id={id} />
      <LiveEnquiry enquiryId={id} after={newest.ok ? newest.value : 0}>
        <OutdatedNotice enquiryId={id} />
        {children}
      </LiveEnquiry>
    </>
  );
}
