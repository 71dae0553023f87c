import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { filterFromQuery } from '#lib/schedule/line-filter.ts';
import { listColumnChoices } from '#lib/services/schedule/list-column-choices.ts';
import { readLines } from '#lib/services/schedule/list-lines.ts';
import { orderLines } from '#lib/services/schedule/order-lines.ts';
import { ScheduleTable } from './_table/schedule-table.client.tsx';

export const dynamic = 'force-dynamic';

/** Lines that the server draws; the others come as they are scrolled to. */
const FIRST_LINES = 30;

interface SchedulePageProps {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function SchedulePage({ params, searchParams }: SchedulePageProps) {
  const enquiryId = idOf((await params).id);
  const context = await asking();
  const filter = filterFromQuery(queryOf(await searchParams));
  const order = await orderLines(context, { enquiryId, filter });
  if (!order.ok) notFound();
  const lines = await readLines(context, { enquiryId, lineIds: order.value.ids.slice(0, FIRST_LINES) });
  if (!lines.ok) notFound();
  const columns = listColumnChoices().filter(({ name }) => name !== 'ignore' && name !== 'remark');
  return (
    <ScheduleTable enquiryId={enquiryId} first={{ order: order.value, lines: lines.value, filter }} columns={columns} />
  );
}

function queryOf(params: Readonly<Record<string, string | readonly string[] | undefined>>): URLSearchParams {
  return new URLSearchParams(
    Object.entries(params).flatMap(([name, value]) =>
      value === undefined ? [] : (typeof value === 'string' ? [value] : value).map((one) => [name, one]),
    ),
  );
}
