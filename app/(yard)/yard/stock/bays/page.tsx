import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { Pager } from '#app/_ui/pager.tsx';
import { type BaysView, openBays } from '#lib/services/stock/open-bays.ts';
import { BayOpen } from './bay-open.tsx';
import { BayRows } from './bay-rows.tsx';
import styles from './bays.module.css';
import { MakeBay } from './make-bay.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Bays' };

interface BaysPageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function BaysPage({ searchParams }: BaysPageProps) {
  const given = await searchParams;
  const text = (key: string): string => {
    const value = given[key];
    return typeof value === 'string' ? value : '';
  };
  const words = text('q');
  const bays = openBays(await asking(), { depot: text('depot'), bay: text('bay'), words, page: Number(text('page')) });
  return (
    <>
      <p>
        <Link href="/yard/stock">Stock</Link>
      </p>
      <h1>Bays</h1>
      {bays.ok ? <Bays view={bays.value} words={words} /> : <p className="notice refusal">{bays.reason.sentence}</p>}
    </>
  );
}

interface BaysProps {
  readonly view: BaysView;
  readonly words: string;
}

function Bays({ view, words }: BaysProps) {
  const { depot, depots, total, page, pages, open } = view;
  const hrefOf = (to: number): string => `/yard/stock/bays?${new URLSearchParams({ depot, q: words })}&page=${to}`;
  return (
    <>
      <nav className="tools" aria-label="Depots">
        {depots.map(({ code, name }) => (
          <Link
            key={code}
            className="button"
            href={`/yard/stock/bays?depot=${code}`}
            aria-current={code === depot ? 'page' : undefined}
          >
            {name}
          </Link>
        ))}
        <a className="button" href={`/api/v1/labels?kind=bay&depot=${depot}`}>
          Labels of all bays here
        </a>
      </nav>
      {open === null ? null : <BayOpen key={open.code} bay={open} depot={depot} mayChange={view.mayChange} />}
      <section className="card" aria-label="Bays of the depot">
        <form className={styles.find} role="search">
          <input type="hidden" name="depot" value={depot} />
          <label>
            Find a bay
            <input name="q" defaultValue={words} autoComplete="off" />
          </label>
          <button type="submit">Find</button>
        </form>
        {total === 0 ? (
          <p className="soft">
            {words === '' ? 'This depot has no bay yet: make the first one below.' : 'No bay here is called so.'}
          </p>
        ) : (
          <BayRows bays={view.bays} depot={depot} open={open?.code ?? ''} />
        )}
        <Pager {...{ page, pages, total, hrefOf }} what={total === 1 ? 'bay' : 'bays'} />
      </section>
      {view.mayChange ? <MakeBay depot={depot} /> : null}
    </>
  );
}
