import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { Pager } from '#app/_ui/pager.tsx';
import { listBookings } from '#lib/services/yard/list-bookings.ts';
import { BookingFilters } from './booking-filters.tsx';
import { BookingRows } from './booking-rows.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Bookings' };

interface BookingsPageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function BookingsPage({ searchParams }: BookingsPageProps) {
  const given = await searchParams;
  const text = (key: string): string => {
    const value = given[key];
    return typeof value === 'string' ? value : '';
  };
  const asked = { filter: text('state'), words: text('q'), from: text('from'), until: text('until') };
  const found = listBookings(await asking(), { ...asked, page: Number(text('page')) });
  if (!found.ok) {
    return (
      <>
        <h1>Bookings</h1>
        <p className="notice refusal">{found.reason.sentence}</p>
      </>
    );
  }
  const { rows, page, pages, total, filter } = found.value;
  const hrefOf = (to: number): string => {
    const query = new URLSearchParams({ state: filter, q: asked.words, from: asked.from, until: asked.until });
    return `/yard/bookings?${query}&page=${to}`;
  };
  return (
    <>
      <div className="heading">
        <h1>Bookings</h1>
        <Link className="button" href="/yard/bookings/new">
          Book without a quote
        </Link>
      </div>
      <BookingFilters asked={{ ...asked, filter }} />
      <section className="card" aria-label="Bookings">
        <BookingRows rows={rows} />
        <Pager page={page} pages={pages} total={total} what={total === 1 ? 'booking' : 'bookings'} hrefOf={hrefOf} />
      </section>
    </>
  );
}
