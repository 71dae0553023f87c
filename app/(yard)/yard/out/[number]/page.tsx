import type { Metadata } from 'next';
import Link from 'next/link';
import { Fragment } from 'react';
import { asking } from '#app/_lib/asking.ts';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import { countText } from '#lib/documents/words/print-values.ts';
import { type OutView, openOut } from '#lib/services/yard/out/open-out.ts';
import { INSTRUCTION_POINTS } from '#lib/stock/load-check.ts';
import { OutBegin } from './out-begin.client.tsx';
import { OutLeave } from './out-leave.client.tsx';
import { OutLoad } from './out-load.client.tsx';
import { OutSent } from './out-sent.client.tsx';

export const dynamic = 'force-dynamic';

interface OutParams {
  readonly params: Promise<{ readonly number: string }>;
}

export async function generateMetadata({ params }: OutParams): Promise<Metadata> {
  return { title: `Out ${(await params).number}` };
}

/** A scanned piece is picked once its list was closed: until then it may still be exchanged. */
function NotPicked({ unpicked }: Pick<OutView, 'unpicked'>) {
  return (
    <p className="notice warning">
      {countText(unpicked.length, 'piece')} of this booking {unpicked.length === 1 ? 'has' : 'have'} not passed the pick
      list yet:{' '}
      {unpicked.map(({ serial }, index) => (
        <Fragment key={serial}>
          {index === 0 ? '' : ', '}
          <span className="tag">{serial}</span>
        </Fragment>
      ))}
      . Scan what is missing there and press “All picked”. What has passed can leave before.
    </p>
  );
}

export default async function OutPage({ params }: OutParams) {
  const { number } = await params;
  const out = openOut(await asking(), decodeURIComponent(number));
  if (!out.ok) {
    return (
      <>
        <h1>Out</h1>
        <p className="notice refusal">{out.reason.sentence}</p>
      </>
    );
  }
  const view = out.value;
  return (
    <>
      <div className="heading">
        <h1>Out: {view.number}</h1>
        <small>
          {view.customer ?? 'No customer'}
          {view.title === null ? '' : ` · ${view.title}`}
          {view.startsOn === null ? null : (
            <>
              {' · leaves '}
              <ShownDate on={view.startsOn} />
            </>
          )}
        </small>
      </div>
      {view.unpicked.length === 0 ? null : <NotPicked unpicked={view.unpicked} />}
      {view.loading === null ? (
        <OutBegin number={view.number} waiting={view.waiting} maySend={view.maySend} />
      ) : (
        <>
          <OutLoad view={view} loading={view.loading} />
          <OutLeave
            number={view.number}
            deliveryId={view.loading.id}
            units={view.loading.units.length}
            questions={view.questions}
            points={INSTRUCTION_POINTS}
          />
        </>
      )}
      <OutSent sent={view.sent} />
      <p className="tools">
        <Link className="button" href={`/yard/back/${view.number}`}>
          Take back
        </Link>
        <Link className="button" href={`/yard/bookings/${view.number}`}>
          Booking
        </Link>
      </p>
    </>
  );
}
