import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { ShownMoment, ShownWindow } from '#app/_ui/shown-forms.client.tsx';
import { bookingPapers } from '#lib/services/yard/booking-papers.ts';
import { type BookingView, openBooking } from '#lib/services/yard/open-booking.ts';
import { BookingDeeds } from './booking-deeds.client.tsx';
import { BookingHire } from './booking-hire.tsx';
import { BookingMoves } from './booking-moves.tsx';
import { BookingPapers } from './booking-papers.tsx';
import { BookingUnits } from './booking-units.tsx';
import { StateStrip } from './state-strip.tsx';

export const dynamic = 'force-dynamic';

interface BookingParams {
  readonly params: Promise<{ readonly number: string }>;
}

export async function generateMetadata({ params }: BookingParams): Promise<Metadata> {
  return { title: `Booking ${decodeURIComponent((await params).number)}` };
}

export default async function BookingPage({ params }: BookingParams) {
  const number = decodeURIComponent((await params).number);
  const context = await asking();
  const booking = openBooking(context, number);
  if (!booking.ok) {
    return (
      <>
        <h1>Booking {number}</h1>
        <p className="notice refusal">{booking.reason.sentence}</p>
      </>
    );
  }
  const view = booking.value;
  const papers = bookingPapers(context, number);
  return (
    <>
      <div className="heading">
        <h1>Booking {view.number}</h1>
        <small>{view.customer ?? (view.note === '' ? 'own use' : view.note)}</small>
      </div>
      <StateStrip view={view} />
      <Facts view={view} />
      {view.hits.length > 0 && <Hits hits={view.hits} />}
      <div className="yard-cards">
        <BookingUnits view={view} />
        {papers.ok && <BookingPapers number={view.number} view={papers.value} />}
        {view.mayChange && <BookingDeeds view={view} />}
        <BookingHire view={view} />
        <BookingMoves view={view} />
      </div>
    </>
  );
}

function Facts({ view }: { readonly view: BookingView }) {
  const { startsOn, endsBefore } = view;
  return (
    <section className="panel" aria-label="Facts">
      <p>
        {startsOn !== null && endsBefore !== null && (
          <strong>
            <ShownWindow days={{ starts_on: startsOn, ends_before: endsBefore }} />
          </strong>
        )}
        {view.depot === '' ? '' : ` · from ${view.depot}`}
        {view.orderNumber === '' ? '' : ` · order ${view.orderNumber}`}
        {view.acceptedBy === '' ? '' : ` · accepted: ${view.acceptedBy}`}
      </p>
      {view.stands === 'held' && view.heldUntil !== null && (
        <p className={view.hasRunOut ? 'notice warning' : ''}>
          {view.hasRunOut ? 'Nobody confirmed it by ' : 'Held until '}
          <ShownMoment at={view.heldUntil} />
          {view.hasRunOut ? ': it holds nothing any more.' : ', then it lapses unless it is confirmed.'}
        </p>
      )}
      <p className="tools">
        {view.enquiryId !== null && (
          <Link className="button" href={`/enquiries/${view.enquiryId}/papers`}>
            Quote {view.quote}
          </Link>
        )}
        {['confirmed', 'allocated', 'picked'].includes(view.stands) && (
          <>
            <Link className="button" href={`/yard/pick/${view.number}`}>
              Pick
            </Link>
            <Link className="button" href={`/yard/pack/${view.number}`}>
              Pack
            </Link>
          </>
        )}
        {['held', 'confirmed', 'allocated', 'picked', 'out'].includes(view.stands) && (
          <Link className="button" href={`/yard/out/${view.number}`}>
            Out
          </Link>
        )}
        {(view.stands === 'out' || view.stands === 'back') && (
          <Link className="button" href={`/yard/back/${view.number}`}>
            Back
          </Link>
        )}
      </p>
    </section>
  );
}

function Hits({ hits }: Pick<BookingView, 'hits'>) {
  return (
    <div className="notice warning">
      <strong>Late units of this booking are counted on by others.</strong>
      <ul>
        {hits.map((hit) => (
          <li key={`${hit.booking} ${hit.serial}`}>
            {hit.serial}: {hit.booking}
            {hit.customer === '' ? '' : ` (${hit.customer})`} from {hit.startsOn}
            {hit.instead === null ? ', and no other is free there' : `, who could have ${hit.instead}`}
          </li>
        ))}
      </ul>
    </div>
  );
}
