import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { pageNumber } from '#app/_lib/history-address.ts';
import { idOf } from '#app/_lib/respond.ts';
import { HistoryTable } from '#app/_ui/history-table.tsx';
import { Pager } from '#app/_ui/pager.tsx';
import { readEnquiryHistory } from '#lib/services/access/read-history.ts';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'History' };

interface EnquiryHistoryProps {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function EnquiryHistoryPage({ params, searchParams }: EnquiryHistoryProps) {
  const enquiryId = idOf((await params).id);
  const history = readEnquiryHistory(await asking(), { enquiryId, page: pageNumber((await searchParams).page) });
  if (!history.ok) return <p className="notice refusal">{history.reason.sentence}</p>;
  const { entries, page, pages, total } = history.value;
  if (total === 0) return <p className="empty">Nothing was done yet since this enquiry came with the demo house.</p>;
  return (
    <>
      <HistoryTable entries={entries} about="one thing" />
      <Pager
        {...{ page, pages, total, what: total === 1 ? 'entry' : 'entries' }}
        hrefOf={(wanted) => `/enquiries/${enquiryId}/history?page=${wanted}`}
      />
    </>
  );
}
