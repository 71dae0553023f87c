import { notFound } from 'next/navigation';
import type { ReactNode } from 'react';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { openEnquiry } from '#lib/services/open-enquiry.ts';
import { openEnquiryLife } from '#lib/services/open-enquiry-life.ts';
import { newestChange } from '#lib/services/read-changes.ts';
import { EnquiryHeader } from './enquiry-header.tsx';
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
  const life = openEnquiryLife(context, enquiry.value.id);
  const newest = newestChange(context, enquiry.value.id);
  if (!life.ok) notFound();
  const { id } = enquiry.value;
  return (
    <>
      <EnquiryHeader enquiry={enquiry.value} life={life.value} />
      <EnquiryTabs id={id} />
      <LiveEnquiry enquiryId={id} after={newest.ok ? newest.value : 0}>
        <OutdatedNotice enquiryId={id} />
        {children}
      </LiveEnquiry>
    </>
  );
}
