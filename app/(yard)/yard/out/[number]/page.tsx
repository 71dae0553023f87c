import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import { openOut } from '#lib/services/yard/out/open-out.ts';
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
      {view.unpicked.length === 0 ? null : (
        <p className="notice warning">
          {view.unpicked.length} of this booking {view.unpicked.length === 1 ? 'is' : 'are'} not picked yet:{' '}
          {view.unpicked.map(({ serial }) => serial).join(', ')}. What is picked can leave before.
        </p>
      )}
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
