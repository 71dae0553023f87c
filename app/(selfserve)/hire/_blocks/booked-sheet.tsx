import { hirePaths } from '#app/_lib/hire-paths.ts';
import type { OrderBooking } from '#lib/services/self-service/order-quotes.ts';
import type { OrderView } from '#lib/services/self-service/order-view.ts';
import { dayIn, hourOf } from '#lib/wording/forms.ts';
import type { Language } from '#lib/wording/language.ts';
import { keyOf, say } from '#lib/wording/wording.ts';
import { PaperLanguage } from './quote-sheet.tsx';
import sheetLook from './sheet.module.css';
import line from './steps.module.css';

interface SheetProps {
  readonly order: OrderView;
  readonly token: string;
  readonly language: Language;
}

/** Where the order stands once it was accepted. */
export function BookedSheet({ order, token, language }: SheetProps) {
  const { booking, stage } = order;
  if (stage === 'cancelled') return <p role="status">{say(language, 'booked.cancelled')}</p>;
  if (booking === null) return null;
  if (booking.state === 'lapsed' || booking.state === 'cancelled')
    return <CameToNothing booking={booking} language={language} />;
  const state = keyOf('state', booking.state);
  const moment = (at: string) => ({ date: dayIn(language, at), hour: hourOf(at) });
  const { startsOn, lastDay, isLate } = booking.hire;
  const days = { from: dayIn(language, startsOn), until: dayIn(language, lastDay) };
  return (
    <section className={`${sheetLook.sheet} ${sheetLook.done}`} aria-labelledby="booked">
      <h2 id="booked">{say(language, 'booked.title', { booking: booking.number })}</h2>
      <Steps booking={booking} language={language} />
      {state !== undefined && <p>{say(language, 'booked.state', { state: say(language, state) })}</p>}
      <p>{say(language, 'booked.days', days)}</p>
      {isLate && <p className={sheetLook.notFree}>{say(language, 'booked.late', days)}</p>}
      {booking.state === 'held' && booking.heldUntil !== null && (
        <p>{say(language, 'booked.held', moment(booking.heldUntil))}</p>
      )}
      {booking.hasSheets ? (
        <a className="button" href={hirePaths.paper(token, 'site-sheet')}>
          {say(language, 'booked.sheets')}
          <PaperLanguage quote={order.quote} language={language} />
        </a>
      ) : (
        <p>{say(language, 'booked.sheets-later')}</p>
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

function CameToNothing({ booking, language }: { readonly booking: OrderBooking; readonly language: Language }) {
  const key = booking.state === 'lapsed' ? 'booked.lapsed' : 'booked.by-house';
  return (
    <div role="status" className={sheetLook.notFree}>
      <p>{say(language, key, { booking: booking.number })}</p>
      {booking.state === 'cancelled' && booking.why !== '' && (
        <p>{say(language, 'booked.why', { why: booking.why })}</p>
      )}
    </div>
  );
}

const STEPS = ['ordered', 'confirmed', 'ready', 'out', 'back', 'closed'] as const;
/** How many of the steps are behind a booking in each state. */
const REACHED: Readonly<Record<OrderBooking['state'], number>> = {
  held: 0,
  confirmed: 1,
  allocated: 1,
  picked: 2,
  out: 3,
  back: 4,
  closed: 5,
  cancelled: 0,
  lapsed: 0,
};

function Steps({ booking, language }: { readonly booking: OrderBooking; readonly language: Language }) {
  const reached = REACHED[booking.state];
  return (
    <ol className={line.steps} aria-label={say(language, 'steps.title')}>
      {STEPS.map((step, index) => (
        <li
          key={step}
          className={index <= reached ? line.reached : undefined}
          aria-current={index === reached ? 'step' : undefined}
        >
          {say(language, `steps.${step}`)}
          {index === reached && <small>{say(language, 'steps.now')}</small>}
        </li>
      ))}
    </ol>
  );
}
