import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { listColumnChoices } from '#lib/services/list-column-choices.ts';
import { listLines } from '#lib/services/list-lines.ts';
import { ScheduleTable } from './schedule-table.client.tsx';

export const dynamic = 'force-dynamic';

const FIRST_WINDOW = 100;

export default async function SchedulePage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const enquiryId = idOf((await params).id);
  const lines = listLines(await asking(), { enquiryId, from: 0, count: FIRST_WINDOW });
  if (!lines.ok) notFound();
  const columns = listColumnChoices().filter(({ name }) => name !== 'ignore' && name !== 'remark');
  return <ScheduleTable enquiryId={enquiryId} first={lines.value} columns={columns} />;
}
