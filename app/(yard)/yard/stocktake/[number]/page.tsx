import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { viewStocktake } from '#lib/services/stock/open-stocktake.ts';
import { StocktakeWork } from './stocktake-work.client.tsx';

export const dynamic = 'force-dynamic';

interface StocktakePageProps {
  readonly params: Promise<{ readonly number: string }>;
}

export async function generateMetadata({ params }: StocktakePageProps): Promise<Metadata> {
  return { title: `Stocktake ${(await params).number}` };
}

export default async function StocktakePage({ params }: StocktakePageProps) {
  const view = viewStocktake(await asking(), (await params).number);
  if (!view.ok) {
    return (
      <>
        <h1>Stocktake</h1>
        <p className="notice refusal">{view.reason.sentence}</p>
      </>
    );
  }
  const { stocktake } = view.value;
  return (
    <>
      <p>
        <Link href="/yard/stocktake">Stocktakes</Link>
      </p>
      <div className="heading">
        <h1>
          {stocktake.number}: {stocktake.depot} {stocktake.bay === '' ? 'the whole depot' : stocktake.bay}
        </h1>
        <span className="mark">{stocktake.state}</span>
      </div>
      <StocktakeWork view={view.value} />
    </>
  );
}
