import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { cache, type ReactNode } from 'react';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { openEnquiryLife } from '#lib/services/enquiries/open-enquiry-life.ts';
import { newestChange } from '#lib/services/schedule/read-changes.ts';
import { openSelfOrder } from '#lib/services/self-service/take-over.ts';
import { EnquiryHeader } from './enquiry-header.tsx';
import { EnquiryTabs } from './enquiry-tabs.client.tsx';
import { LiveEnquiry } from './live-enquiry.client.tsx';
import { OutdatedNotice } from './outdated-notice.client.tsx';
import { SelfServicePanel } from './self-service-panel.client.tsx';

export const dynamic = 'force-dynamic';

interface EnquiryLayoutProps {
  readonly children: ReactNode;
  readonly params: Promise<{ readonly id: string }>;
}

/** Title and heading ask for the same enquiry: it is opened once a request. */
const enquiryOf = cache(async (id: string) => openEnquiry(await asking(), idOf(id)));

export async function generateMetadata({ params }: Pick<EnquiryLayoutProps, 'params'>): Promise<Metadata> {
  const enquiry = await enquiryOf((await params).id);
  if (!enquiry.ok) return {};
  const { number, title } = enquiry.value;
  return { title: { default: `${number} ${title} · Kitwright`, template: `%s · ${number} · Kitwright` } };
}

export default async function EnquiryLayout({ children, params }: EnquiryLayoutProps) {
  const context = await asking();
  const enquiry = await enquiryOf((await params).id);
  if (!enquiry.ok) notFound();
  const life = openEnquiryLife(context, enquiry.value.id);
  const newest = newestChange(context, enquiry.value.id);
  if (!life.ok) notFound();
  const { id } = enquiry.value;
  const self = openSelfOrder(context, id);
  return (
    <>
      <EnquiryHeader enquiry={enquiry.value} life={life.value} />
      <EnquiryTabs id={id} />
      <LiveEnquiry enquiryId={id} after={newest.ok ? newest.value : 0}>
        {self.ok && self.value !== null && <SelfServicePanel enquiryId={id} order={self.value} />}
        <OutdatedNotice enquiryId={id} />
        {children}
      </LiveEnquiry>
    </>
  );
}
