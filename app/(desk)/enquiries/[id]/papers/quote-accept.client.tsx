'use client';
import { useRouter } from 'next/navigation';
import { type FormEvent, useRef, useState } from 'react';
import { send } from '#app/_ui/plan-send.ts';
import styles from '#app/_ui/plan-sheet.module.css';

interface AcceptProps {
  readonly quoteId: number;
  /** Number and revision. */
  readonly quote: string;
  readonly total: string;
  /** Days of the hire, as they are printed. */
  readonly days: string;
}

/** Writes down that the customer said yes, after telling what that books. */
export function QuoteAccept({ quoteId, quote, total, days }: AcceptProps) {
  const router = useRouter();
  const dialog = useRef<HTMLDialogElement>(null);
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');

  async function accept(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    setBusy(true);
    const answer = await send({
      path: `/api/v1/quotes/${quoteId}/accept`,
      method: 'POST',
      body: { acceptedBy: form.get('acceptedBy'), orderNumber: form.get('orderNumber') },
    });
    setBusy(false);
    setProblem(answer.ok ? '' : answer.sentence);
    dialog.current?.close();
    router.refresh();
  }

  return (
    <div>
      <button type="button" className={styles.main} disabled={busy} onClick={() => dialog.current?.showModal()}>
        Accepted by the customer
      </button>
      {problem === '' ? null : (
        <p className={styles.refused} role="alert">
          {problem}
        </p>
      )}
      <dialog ref={dialog} className={styles.dialog} aria-labelledby="accept-title">
        <form onSubmit={accept}>
          <h2 id="accept-title">Has the customer accepted {quote}?</h2>
          <p>
            {total} with tax. The units in its kits are booked by serial number for {days}: all of them, or none if one
            is taken meanwhile. It cannot be taken back here; only cancelling the booking sets the units free.
          </p>
          <AcceptFields />
          <div className={styles.row}>
            <button type="submit" className={styles.main} disabled={busy}>
              {busy ? 'Booking the units…' : 'Yes, book the units'}
            </button>
            <button type="button" className={styles.button} disabled={busy} onClick={() => dialog.current?.close()}>
              Not yet
            </button>
          </div>
        </form>
      </dialog>
    </div>
  );
}

function AcceptFields() {
  return (
    <div className={styles.row}>
      <label className={styles.field}>
        Who said yes (if known)
        <input className={styles.input} name="acceptedBy" maxLength={200} autoComplete="off" />
      </label>
      <label className={styles.field}>
        Their order number (if any)
        <input className={styles.input} name="orderNumber" maxLength={100} autoComplete="off" />
      </label>
    </div>
  );
}
