'use client';
import { useRouter } from 'next/navigation';
import { type FormEvent, useRef, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { ShownWords, useWords } from '#app/_ui/shown-forms.client.tsx';

interface AcceptProps {
  readonly quoteId: number;
  /** Number and revision. */
  readonly quote: string;
  readonly total: string;
  /** Days of the hire, as they are printed. */
  readonly days: string;
  /** Options the quote offers, with their totals; empty where it offers one. */
  readonly options: readonly { readonly slot: number; readonly name: string; readonly total: string }[];
  readonly orderNumber: 'asked for' | 'not asked for';
}

/** Writes down that the customer said yes, after telling what that books. */
export function QuoteAccept({ quoteId, quote, total, days, options, orderNumber }: AcceptProps) {
  const router = useRouter();
  const dialog = useRef<HTMLDialogElement>(null);
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');
  const words = useWords();

  async function accept(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    setBusy(true);
    const answer = await send({
      path: `/api/v1/quotes/${quoteId}/accept`,
      method: 'POST',
      body: {
        acceptedBy: form.get('acceptedBy'),
        orderNumber: form.get('orderNumber'),
        ...(options.length === 0 ? {} : { option: Number(form.get('option')) }),
      },
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
            {options.length === 0 ? `${words(total)} with tax. ` : ''}The units in its kits are booked by serial number
            for {words(days)}: all of them, or none if one is taken meanwhile. Cancelling the acceptance sets them free
            again.
          </p>
          {options.length === 0 ? null : <OptionChoice options={options} />}
          <AcceptFields orderNumber={orderNumber} />
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

function OptionChoice({ options }: Pick<AcceptProps, 'options'>) {
  return (
    <fieldset className={styles.choices}>
      <legend>Which option was ordered?</legend>
      {options.map(({ slot, name, total }, index) => (
        <label key={slot}>
          <input type="radio" name="option" value={slot} required /> {index + 1}: {name},{' '}
          <ShownWords>{total}</ShownWords>
        </label>
      ))}
    </fieldset>
  );
}

function AcceptFields({ orderNumber }: Pick<AcceptProps, 'orderNumber'>) {
  return (
    <div className={styles.row}>
      <label className={styles.field}>
        Who said yes (if known)
        <input className={styles.input} name="acceptedBy" maxLength={200} autoComplete="off" />
      </label>
      <label className={styles.field}>
        {orderNumber === 'asked for' ? 'Their order number (their terms ask for it)' : 'Their order number (if any)'}
        <input
          className={styles.input}
          name="orderNumber"
          required={orderNumber === 'asked for'}
          maxLength={100}
          autoComplete="off"
        />
      </label>
    </div>
  );
}
