import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { historyAddress, readHistoryAddress } from '#app/_lib/history-address.ts';
import { HistoryTable } from '#app/_ui/history-table.tsx';
import { Pager } from '#app/_ui/pager.tsx';
import {
  HISTORY_KINDS,
  type HistoryAsked,
  type HouseHistory,
  readHouseHistory,
} from '#lib/services/access/read-history.ts';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'History' };

interface HistoryPageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function HistoryPage({ searchParams }: HistoryPageProps) {
  const asked = readHistoryAddress(await searchParams);
  const history = readHouseHistory(await asking(), asked);
  if (!history.ok) return <p className="notice refusal">{history.reason.sentence}</p>;
  const { entries, page, pages, total, people } = history.value;
  return (
    <>
      <h1>Who did what</h1>
      <HistoryFilters asked={asked} people={people} />
      {total === 0 ? (
        <div className="empty">
          <h2>Nothing of the kind</h2>
          <p>No entry of the log fits what you asked for. Ask for less, or for other days.</p>
          <Link className="button" href="/history">
            Show everything
          </Link>
        </div>
      ) : (
        <>
          <HistoryTable entries={entries} about="anything" />
          <Pager
            {...{ page, pages, total, what: total === 1 ? 'entry' : 'entries' }}
            hrefOf={(wanted) => historyAddress({ ...asked, page: wanted })}
          />
        </>
      )}
    </>
  );
}

interface HistoryFiltersProps {
  readonly asked: HistoryAsked;
  readonly people: HouseHistory['people'];
}

/** All of it stands in the address, so that a link keeps it; works before any script has loaded. */
function HistoryFilters({ asked, people }: HistoryFiltersProps) {
  return (
    <form className="tools" action="/history">
      <div>
        <label htmlFor="who">Who</label>
        <select id="who" name="who" defaultValue={asked.whoId}>
          <option value="">anybody</option>
          {people.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor="kind">To what</label>
        <select id="kind" name="kind" defaultValue={asked.kind}>
          <option value="">anything</option>
          {HISTORY_KINDS.map((kind) => (
            <option key={kind}>{kind}</option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor="q">Words</label>
        <input id="q" name="q" type="search" defaultValue={asked.words} />
      </div>
      <div>
        <label htmlFor="from">From</label>
        <input id="from" name="from" type="date" defaultValue={asked.from} />
      </div>
      <div>
        <label htmlFor="until">Until</label>
        <input id="until" name="until" type="date" defaultValue={asked.until} />
      </div>
      <button type="submit">Show</button>
    </form>
  );
}
