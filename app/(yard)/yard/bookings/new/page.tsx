import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { newBookingForm } from '#lib/services/yard/new-booking-form.ts';
import { BookWithoutQuote } from './book-without-quote.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Book without a quote' };

export default async function NewBookingPage() {
  const form = newBookingForm(await asking());
  return (
    <>
      <p>
        <Link href="/yard/bookings">Bookings</Link>
      </p>
      <h1>Book without a quote</h1>
      <p className="soft">
        For the house’s own use, a demonstration, or to keep equipment for a customer before a quote is accepted.
        Nothing is charged by it.
      </p>
      {form.ok ? <BookWithoutQuote form={form.value} /> : <p className="notice refusal">{form.reason.sentence}</p>}
    </>
  );
}
