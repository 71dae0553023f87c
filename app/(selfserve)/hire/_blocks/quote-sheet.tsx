import { hirePaths } from '#app/_lib/hire-paths.ts';
import type { OrderView } from '#lib/services/self-service/order-view.ts';
import { amountIn, dayIn, hourOf } from '#lib/wording/forms.ts';
import type { Language } from '#lib/wording/language.ts';
import { keyOf, say } from '#lib/wording/wording.ts';
import { Field } from './frame-blocks.tsx';
import look from './hire.module.css';

interface SheetProps {
  readonly order: OrderView;
  readonly token: string;
  readonly language: Language;
}

/** The quote as it was issued, and the one form that orders it. */
export function QuoteSheet({ order, token, language }: SheetProps) {
  const { quote, booking, stage, contact } = order;
  if (quote === null) return null;
  const amount = amountIn(language, { amount_minor: quote.total_minor, currency: quote.currency });
  const mayAccept = order.mayAct && booking === null && stage === 'quoted' && !order.withDesk;
  return (
    <section className={look.sheet} aria-labelledby="quote">
      <h2 id="quote">{say(language, 'quote.title', { quote: quote.name })}</h2>
      <p className={look.total}>
        {amount} {quote.currency}
      </p>
      <p>{say(language, 'quote.valid', { date: dayIn(language, quote.validUntil) })}</p>
      <p className={look.row}>
        <a className="button" href={hirePaths.paper(token, 'quote')}>
          {say(language, 'quote.pdf')}
        </a>
        <a className="button" href={hirePaths.paper(token, 'summary')}>
          {say(language, 'quote.summary')}
        </a>
      </p>
      {mayAccept && (
        <form method="post" action={hirePaths.deed(token, 'accept')} className={look.inner}>
          <h3>{say(language, 'quote.accept-title')}</h3>
          <input type="hidden" name="quote" value={quote.name} />
          <Field name="accept-name" label={say(language, 'contact.name')}>
            <input
              id="accept-name"
              name="name"
              required
              maxLength={120}
              autoComplete="name"
              defaultValue={contact.name ?? ''}
            />
          </Field>
          <Field name="order_number" label={say(language, 'quote.order-number')}>
            <input id="order_number" name="order_number" required maxLength={60} autoComplete="off" />
          </Field>
          <label className={look.tick}>
            <input type="checkbox" name="terms" value="accepted" required />
            <span>{say(language, 'quote.terms')}</span>
          </label>
          <button type="submit" className={`button main ${look.wide}`}>
            {say(language, 'quote.accept', { amount, currency: quote.currency })}
          </button>
        </form>
      )}
    </section>
  );
}

/** Where the order stands once it was accepted. */
export function BookedSheet({ order, token, language }: SheetProps) {
  const { booking, stage } = order;
  if (booking === null) return stage === 'cancelled' ? <p role="status">{say(language, 'booked.cancelled')}</p> : null;
  const state = keyOf('state', booking.state);
  const moment = (at: string) => ({ date: dayIn(language, at), hour: hourOf(at) });
  return (
    <section className={`${look.sheet} ${look.done}`} aria-labelledby="booked">
      <h2 id="booked">{say(language, 'booked.title', { booking: booking.number })}</h2>
      {state !== undefined && <p>{say(language, 'booked.state', { state: say(language, state) })}</p>}
      {booking.state === 'held' && booking.heldUntil !== null && (
        <p>{say(language, 'booked.held', moment(booking.heldUntil))}</p>
      )}
      {booking.mayCancel && order.mayAct && (
        <form method="post" action={hirePaths.deed(token, 'cancel')}>
          <p>{say(language, 'booked.cancel-until', moment(booking.cancelUntil))}</p>
          <button type="submit" className="button danger">
            {say(language, 'booked.cancel')}
          </button>
        </form>
      )}
    </section>
  );
}
