import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import { listHouseBays } from '#lib/services/stock/bays.ts';
import { listHouseStocktakes, type StocktakesView } from '#lib/services/stock/open-stocktake.ts';
import { OpenStocktake } from './open-stocktake.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Stocktake' };

export default async function StocktakesPage() {
  const context = await asking();
  const view = listHouseStocktakes(context);
  if (!view.ok) {
    return (
      <>
        <h1>Stocktake</h1>
        <p className="notice refusal">{view.reason.sentence}</p>
      </>
    );
  }
  const bays = listHouseBays(context);
  const open = view.value.rows.filter(({ state }) => state === 'open');
  const ended = view.value.rows.filter(({ state }) => state !== 'open');
  return (
    <>
      <h1>Stocktake</h1>
      <div className="yard-cards">
        {view.value.mayChange && (
          <OpenStocktake
            depots={view.value.depots}
            bays={bays.ok ? bays.value.map(({ depot, code }) => ({ depot, code })) : []}
          />
        )}
        <Rows title="Open" rows={open} empty="No stocktake is open." />
        <Rows title="Done" rows={ended} empty="None was done yet." />
      </div>
    </>
  );
}

interface RowsProps {
  readonly title: string;
  readonly rows: StocktakesView['rows'];
  readonly empty: string;
}

function Rows({ title, rows, empty }: RowsProps) {
  return (
    <section className="card" aria-label={title}>
      <h2>{title}</h2>
      {rows.length === 0 ? (
        <p className="soft">{empty}</p>
      ) : (
        <ul className="yard-rows">
          {rows.map((row) => (
            <li key={row.number}>
              <Link className="tag" href={`/yard/stocktake/${row.number}`}>
                {row.number} {row.depot} {row.bay === '' ? 'the whole depot' : row.bay}
              </Link>
              <span>
                <span className="mark">{row.state}</span>{' '}
                <small>
                  {row.opened_by}, <ShownMoment at={row.opened_at} />
                </small>
              </span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
