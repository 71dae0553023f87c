import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import { type BackView, openBack } from '#lib/services/yard/back/open-back.ts';
import { BackDeclare } from './back-declare.client.tsx';
import { BackWork } from './back-work.client.tsx';

export const dynamic = 'force-dynamic';

interface BackParams {
  readonly params: Promise<{ readonly number: string }>;
}

export async function generateMetadata({ params }: BackParams): Promise<Metadata> {
  return { title: `Back ${(await params).number}` };
}

export default async function BackPage({ params }: BackParams) {
  const { number } = await params;
  const back = openBack(await asking(), decodeURIComponent(number));
  if (!back.ok) {
    return (
      <>
        <h1>Back</h1>
        <p className="notice refusal">{back.reason.sentence}</p>
      </>
    );
  }
  const view = back.value;
  const current = view.returns.find(({ id }) => id === view.taking);
  const isOver = view.hasEnded && (view.state !== 'closed' || view.awaited.length === 0);
  return (
    <>
      <div className="heading">
        <h1>Back: {view.number}</h1>
        <small>
          {view.customer ?? 'No customer'}
          {view.title === null ? '' : ` · ${view.title}`} · {view.awaited.length} awaited
        </small>
      </div>
      <Late view={view} />
      {isOver ? <p className="notice">This booking is {view.state}: nothing more comes back with it.</p> : null}
      {view.hasEnded && !isOver ? <Found view={view} /> : null}
      {isOver || view.awaited.length === 0 ? null : (
        <BackDeclare key={`declare ${view.returns.length}`} view={view} isFirst={current === undefined} />
      )}
      <BackWork key={`work ${current?.id ?? 0}`} view={view} current={current} isOver={isOver} />
      <p className="tools">
        <Link className="button main" href={`/yard/charges/${view.number}`}>
          Charges and return note
        </Link>
        <Link className="button" href="/yard/work-orders">
          Work orders
        </Link>
        <Link className="button" href={`/yard/out/${view.number}`}>
          Deliveries
        </Link>
        <Link className="button" href={`/yard/bookings/${view.number}`}>
          Booking
        </Link>
      </p>
    </>
  );
}

/** A closed booking may still get back what was charged as lost. */
function Found({ view }: { readonly view: BackView }) {
  const lost = view.awaited.map(({ serial }) => serial).join(', ');
  return (
    <div className="notice">
      <p>
        <strong>This booking is closed.</strong> Charged as lost: {lost}. If one of them has been found, begin a return
        and scan it: it goes to quarantine, and what is given back for it waits under Charges for the Desk.
      </p>
    </div>
  );
}

/** What is late, and who counts on it. */
function Late({ view }: { readonly view: BackView }) {
  const late = view.awaited.filter(({ isLate }) => isLate);
  if (late.length === 0) return null;
  return (
    <div className="notice warning">
      <p>
        <strong>
          {late.length} {late.length === 1 ? 'piece is' : 'pieces are'} late:
        </strong>{' '}
        {late.map(({ serial }) => serial).join(', ')}.
      </p>
      {view.hits.map((hit) => (
        <p key={`${hit.booking} ${hit.serial}`}>
          {hit.serial} is booked from <ShownDate on={hit.startsOn} /> by {hit.booking}
          {hit.customer === '' ? '' : ` (${hit.customer})`}
          {hit.instead === null ? ': no other is free, tell the Desk' : `: ${hit.instead} could go in its place`}.
        </p>
      ))}
    </div>
  );
}
