'use client';

import { useEffect, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import type { BookingTried, TriedModel } from '#lib/services/yard/try-booking.ts';
import moves from '../../../_blocks/moves.module.css';
import { canBeTried, type Draft, wantedOf } from './booking-draft.ts';
import styles from './new-booking.module.css';

const WAIT_MS = 300;
type Told =
  | { readonly kind: 'free'; readonly tried: BookingTried }
  | { readonly kind: 'refused'; readonly sentence: string };

/** What is free of it now, asked anew a moment after each change; only the newest answer is shown. */
export function WhatIsFree({ draft }: { readonly draft: Draft }) {
  const [told, setTold] = useState<Told | null>(null);
  const question = canBeTried(draft) ? JSON.stringify(wantedOf(draft)) : '';
  useEffect(() => {
    let isNewest = true;
    if (question === '') {
      setTold(null);
      return;
    }
    const later = setTimeout(async () => {
      const body: unknown = JSON.parse(question);
      const sent = await send<BookingTried>({ method: 'POST', path: '/api/v1/yard/bookings/trial', body });
      if (!isNewest) return;
      setTold(sent.ok ? { kind: 'free', tried: sent.value } : { kind: 'refused', sentence: sent.sentence });
    }, WAIT_MS);
    return () => {
      isNewest = false;
      clearTimeout(later);
    };
  }, [question]);
  return (
    <section className="panel" aria-labelledby="free" aria-live="polite">
      <h2 id="free">Free on these days</h2>
      {told === null ? <p className="soft">Choose days and a model, and it says here what is free.</p> : null}
      {told?.kind === 'refused' ? <p className="notice refusal">{told.sentence}</p> : null}
      {told?.kind === 'free' ? <Free tried={told.tried} /> : null}
    </section>
  );
}

function Free({ tried }: { readonly tried: BookingTried }) {
  return (
    <>
      <p className={tried.isFree ? 'notice good' : 'notice warning'}>
        {tried.isFree ? 'All of it is free.' : 'Not all of it is free: it cannot be booked so.'} It can go out again on{' '}
        <ShownDate on={tried.freeAgainOn} />, turnaround included.
      </p>
      <ul className={moves.list}>
        {tried.models.map((one) => (
          <TriedRow key={one.model} one={one} />
        ))}
      </ul>
    </>
  );
}

function TriedRow({ one }: { readonly one: TriedModel }) {
  return (
    <li>
      <div className={moves.what}>
        <strong className="tag">{one.model}</strong> {one.name}
        {one.short === '' ? null : <p>{one.short}</p>}
        <ul className={styles.ways}>
          {one.bring.map(({ depot, count, sendOn, isInTime }) => (
            <li key={depot}>
              {count} to be brought from {depot}, loaded there on <ShownDate on={sendOn} />
              {isInTime ? '' : ': that day has passed, so it would come late'}.
            </li>
          ))}
          {one.waiters.map(({ number, customer, startsOn, frees, couldStartOn }) => (
            <li key={number}>
              Booking {number}
              {customer === '' ? '' : ` of ${customer}`} from <ShownDate on={startsOn} /> would free {frees} if it began
              on <ShownDate on={couldStartOn} />.
            </li>
          ))}
          {one.alike.length === 0 ? null : (
            <li>
              Free of its kind: {one.alike.map(({ model, name, free }) => `${model} ${name} (${free})`).join('; ')}.
              Whether one fits hangs on the valve: an enquiry judges it.
            </li>
          )}
        </ul>
      </div>
      <span className={one.short === '' ? 'mark' : 'mark warning'}>
        {one.asked} asked, {one.free} free
      </span>
    </li>
  );
}
