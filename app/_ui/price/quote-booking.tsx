import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { ShownDate, ShownMoment, ShownWindow } from '#app/_ui/shown-forms.client.tsx';
import { countText } from '#lib/documents/words/print-values.ts';
import type { QuoteView } from '#lib/services/quotes/list-issued-quotes.ts';

type Booking = NonNullable<QuoteView['booking']>;

interface QuoteBookingProps {
  readonly quote: QuoteView;
  readonly booking: Booking;
}

/** What an acceptance brought about: who said yes, which units are booked, and the packing list that names them. */
export function QuoteBooking({ quote, booking }: QuoteBookingProps) {
  const units = booking.models.reduce((sum, model) => sum + model.serials.length, 0);
  const name = `${quote.number} ${quote.revision}`;
  return (
    <section className={styles.calm} aria-label={`Acceptance of ${name}`}>
      <p>
        <strong>
          {name} was accepted
          {booking.acceptedOn === null ? (
            ''
          ) : (
            <>
              {' '}
              on <ShownDate on={booking.acceptedOn} />
            </>
          )}
        </strong>
        {booking.acceptedBy === '' ? '' : ` by ${booking.acceptedBy}`}
        {booking.orderNumber === '' ? '' : `, order ${booking.orderNumber}`}.
      </p>
      <p>
        Booking <a href={`/yard/bookings/${booking.number}`}>{booking.number}</a> is {booking.state}, with{' '}
        {countText(units, 'unit')}
        {booking.window !== null && (
          <>
            , <ShownWindow days={booking.window} />
          </>
        )}
        {booking.heldUntil !== null && (
          <>
            ; to be confirmed by <ShownMoment at={booking.heldUntil} />
          </>
        )}
        .
      </p>
      <p>
        <a href={`/api/v1/quotes/${quote.id}/booked/booked-packing-list`} target="_blank" rel="noreferrer">
          Packing list with serial numbers (PDF)
        </a>
        {' · '}
        <a href={`/api/v1/quotes/${quote.id}/booked/despatch-xml`}>Despatch advice (UBL 2.1 XML)</a>
      </p>
      <BookedModels models={booking.models} />
    </section>
  );
}

function BookedModels({ models }: { readonly models: Booking['models'] }) {
  return (
    <details>
      <summary>Booked units</summary>
      <PlanWide label="Booked units">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Model</th>
              <th scope="col">Serial numbers</th>
            </tr>
          </thead>
          <tbody>
            {models.map((model) => (
              <tr key={model.number}>
                <th scope="row">
                  {model.name}
                  <br />
                  <span className={styles.soft}>{model.number}</span>
                </th>
                <td className={styles.sentence}>{model.serials.join(', ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </PlanWide>
    </details>
  );
}
