import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { listColumnChoices } from '#lib/services/schedule/list-column-choices.ts';
import { ListIntake } from './list-intake.client.tsx';
import { TakenLists } from './taken-lists.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'List' };

export default async function ListPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const enquiry = openEnquiry(await asking(), idOf((await params).id));
  if (!enquiry.ok) notFound();
  return (
    <>
      <ListIntake enquiryId={enquiry.value.id} lines={enquiry.value.lines} columns={listColumnChoices()} />
      <TakenLists enquiryId={enquiry.value.id} files={enquiry.value.files} />
    </>
  );
}
