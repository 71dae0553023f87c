import Link from 'next/link';
import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { ShownDate, ShownMoney } from '#app/_ui/shown-forms.client.tsx';
import { type CustomerView, openCustomer } from '#lib/services/customers/open-customer.ts';
import { EnquiryRows } from '../../../enquiries/enquiry-rows.tsx';

export const dynamic = 'force-dynamic';

export default async function DealingsPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const customer = openCustomer(await asking(), idOf((await params).id));
  if (!customer.ok) notFound();
  const { id, enquiries, quotes, bookings } = customer.value;
  return (
    <>
      <h2>Enquiries</h2>
      {enquiries.rows.length === 0 ? (
        <p className="empty">They have not asked for anything yet.</p>
      ) : (
        <EnquiryRows found={enquiries} asked={null} />
      )}
      <p className="tools" style={{ marginTop: 'var(--space-3)' }}>
        <Link className="button" href={`/enquiries/new?customer=${id}`}>
          New enquiry
        </Link>
        {enquiries.pages > 1 && <Link href={`/enquiries?state=all&customer=${id}`}>All {enquiries.total}</Link>}
      </p>
      <h2>Quotes</h2>
      {quotes.length === 0 ? <p className="soft">Nothing was quoted yet.</p> : <Quotes quotes={quotes} />}
      <h2>Bookings</h2>
      {bookings.length === 0 ? (
        <p className="soft">Nothing is booked. Units are booked when a quote is accepted.</p>
      ) : (
        <Bookings bookings={bookings} />
      )}
    </>
  );
}

function Quotes({ quotes }: Pick<CustomerView, 'quotes'>) {
  return (
    <div className="wide">
      <table>
        <thead>
          <tr>
            <th>Quote</th>
            <th>Enquiry</th>
            <th>State</th>
            <th className="wide-only">Issued</th>
            <th className="wide-only">Valid until</th>
            <th className="number">Total</th>
          </tr>
        </thead>
        <tbody>
          {quotes.map((quote) => (
            <tr key={quote.id}>
              <td className="tag">
                <Link href={`/enquiries/${quote.enquiryId}/papers`}>
                  {quote.number} {quote.revision}
                </Link>
              </td>
              <td>{quote.enquiry}</td>
              <td>{quote.state}</td>
              <td className="wide-only">
                <ShownDate on={quote.issued_on} />
              </td>
              <td className="wide-only">
                <ShownDate on={quote.valid_until} />
              </td>
              <td className="number">
                <ShownMoney minor={quote.total_minor} currency={quote.currency} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Bookings({ bookings }: Pick<CustomerView, 'bookings'>) {
  return (
    <div className="wide">
      <table>
        <thead>
          <tr>
            <th>Booking</th>
            <th>Quote</th>
            <th>State</th>
            <th className="wide-only">From</th>
            <th className="wide-only">Free again before</th>
            <th className="number">Pieces</th>
          </tr>
        </thead>
        <tbody>
          {bookings.map((booking) => (
            <tr key={booking.id}>
              <td className="tag">
                <Link href={`/yard/bookings/${booking.number}`}>{booking.number}</Link>
              </td>
              <td>{booking.quote}</td>
              <td>{booking.state}</td>
              <td className="wide-only">{booking.starts_on !== null && <ShownDate on={booking.starts_on} />}</td>
              <td className="wide-only">{booking.ends_before !== null && <ShownDate on={booking.ends_before} />}</td>
              <td className="number">{booking.pieces}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
