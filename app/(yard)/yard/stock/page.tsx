import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import type { SearchParams } from '#app/_lib/enquiry-list-address.ts';
import { readUnitAddress, unitAddress } from '#app/_lib/unit-list-address.ts';
import { Pager } from '#app/_ui/pager.tsx';
import { findUnits } from '#lib/services/stock/find-units.ts';
import { CountedPieces } from './counted-pieces.tsx';
import { UnitFilters } from './unit-filters.tsx';
import { UnitRows } from './unit-rows.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Stock' };

export default async function StockPage({ searchParams }: { readonly searchParams: Promise<SearchParams> }) {
  const params = await searchParams;
  const context = await asking();
  const isCounted = params.kind === 'counted';
  return (
    <>
      <div className="heading">
        <h1>Stock</h1>
        <nav className="tools" aria-label="Kinds of stock">
          <Link className="button" href="/yard/stock" aria-current={isCounted ? undefined : 'page'}>
            Units
          </Link>
          <Link className="button" href="/yard/stock?kind=counted" aria-current={isCounted ? 'page' : undefined}>
            Counted pieces
          </Link>
          <Link className="button" href="/yard/stock/bays">
            Bays
          </Link>
          <Link className="button main" href="/yard/stock/new">
            Add a unit
          </Link>
        </nav>
      </div>
      {isCounted ? <CountedPieces context={context} /> : <Units params={params} context={context} />}
    </>
  );
}

interface UnitsProps {
  readonly params: SearchParams;
  readonly context: Awaited<ReturnType<typeof asking>>;
}

function Units({ params, context }: UnitsProps) {
  const asked = readUnitAddress(params);
  const found = findUnits(context, asked);
  if (!found.ok) return <p className="notice refusal">{found.reason.sentence}</p>;
  const { page, pages, total } = found.value;
  return (
    <>
      <UnitFilters asked={asked} found={found.value} />
      {total === 0 ? (
        <div className="empty">
          <h2>No unit here</h2>
          <p>Nothing in stock answers to these filters: look with fewer of them.</p>
          <Link className="button" href="/yard/stock">
            Show all units
          </Link>
        </div>
      ) : (
        <>
          <UnitRows rows={found.value.rows} />
          <Pager
            {...{ page, pages, total, what: total === 1 ? 'unit' : 'units' }}
            hrefOf={(to) => unitAddress({ asked, change: { page: to } })}
          />
        </>
      )}
    </>
  );
}
