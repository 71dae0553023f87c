'use client';

import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { ShownDate, ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import type { LinkAsk } from '#lib/services/self-service/answer-wish.ts';
import styles from './self-service-panel.module.css';

interface AskedProps {
  readonly enquiryId: number;
  readonly asks: readonly LinkAsk[];
}

/** What the customer asked for through the link while the hire runs, and where each is settled. */
export function AskedByLink({ enquiryId, asks }: AskedProps) {
  return asks.map((ask) => (
    <div key={`${ask.kind} ${ask.at}`} className="notice warning">
      {ask.kind === 'off-hire' ? (
        <p>
          Off-hire notice {ask.notice} for <Booking number={ask.booking} />, said by {ask.saidBy},{' '}
          <ShownMoment at={ask.at} />: arrange the collection.
        </p>
      ) : (
        <>
          <p>
            Wants to keep <Booking number={ask.booking} /> until <ShownDate on={ask.until} />, asked{' '}
            <ShownMoment at={ask.at} />. It is not free on the same terms: extend it there, or say why not.
          </p>
          <Decline enquiryId={enquiryId} />
        </>
      )}
    </div>
  ));
}

function Booking({ number }: { readonly number: string }) {
  return <Link href={`/yard/bookings/${number}`}>{number}</Link>;
}

function Decline({ enquiryId }: Pick<AskedProps, 'enquiryId'>) {
  const router = useRouter();
  const [answer, setAnswer] = useState('');
  const [said, setSaid] = useState('');
  async function decline(event: FormEvent) {
    event.preventDefault();
    const sent = await send({
      method: 'POST',
      path: `/api/v1/enquiries/${enquiryId}/self-service`,
      body: { deed: 'decline-extension', answer },
    });
    setSaid(sent.ok ? 'Declined; the customer reads it at the link.' : sent.sentence);
    if (sent.ok) router.refresh();
  }
  return (
    <form onSubmit={decline} className={styles.decline}>
      <label>
        Why not{' '}
        <input value={answer} maxLength={500} required onChange={({ target }) => setAnswer(target.value)} size={40} />
      </label>
      <button type="submit" className="button">
        Decline the extension
      </button>
      <p role="status">{said}</p>
    </form>
  );
}
