'use client';
import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';

const MOVES = {
  declined: { button: 'Declined by the customer', title: 'Why did the customer decline?', done: 'Mark it declined' },
  withdrawn: { button: 'Withdraw it', title: 'Why is it withdrawn?', done: 'Withdraw the quote' },
  cancelled: {
    button: 'Cancel the acceptance',
    title: 'Why is the acceptance taken back? All its units are set free at once.',
    done: 'Cancel it and free the units',
  },
} as const;
export type QuoteMoveName = keyof typeof MOVES;

interface MovesProps {
  readonly quoteId: number;
  readonly quote: string;
  readonly moves: readonly QuoteMoveName[];
  /** Whether it can be opened again. */
  readonly closed: 'yes' | 'no';
}

/** Moves an issued quote, with the reason. */
export function QuoteMoves({ quoteId, quote, moves, closed }: MovesProps) {
  const router = useRouter();
  const dialog = useRef<HTMLDialogElement>(null);
  const [asked, setAsked] = useState<QuoteMoveName>('declined');
  const [reason, setReason] = useState('');
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');

  async function move(to: QuoteMoveName | 'issued'): Promise<void> {
    setBusy(true);
    const answer =
      to === 'cancelled'
        ? await send({ path: `/api/v1/quotes/${quoteId}/cancel`, method: 'POST', body: { reason } })
        : await send({ path: `/api/v1/quotes/${quoteId}/state`, method: 'PATCH', body: { to, reason } });
    setBusy(false);
    setProblem(answer.ok ? '' : answer.sentence);
    if (answer.ok) setReason('');
    dialog.current?.close();
    router.refresh();
  }

  return (
    <>
      <span className={styles.row}>
        {moves.map((name) => (
          <button
            key={name}
            type="button"
            className={styles.button}
            aria-label={`${MOVES[name].button}, ${quote}`}
            disabled={busy}
            onClick={() => {
              setAsked(name);
              dialog.current?.showModal();
            }}
          >
            {MOVES[name].button}
          </button>
        ))}
        {closed === 'yes' ? (
          <button
            type="button"
            className={styles.button}
            aria-label={`Open ${quote} again`}
            disabled={busy}
            onClick={() => move('issued')}
          >
            Open it again
          </button>
        ) : null}
      </span>
      <div role="alert">{problem === '' ? null : <p className={styles.refused}>{problem}</p>}</div>
      <dialog ref={dialog} className={styles.dialog} aria-labelledby={`move-${quoteId}`}>
        <h2 id={`move-${quoteId}`}>{quote}</h2>
        <MoveReason
          asked={asked}
          reason={reason}
          busy={busy}
          onReason={setReason}
          onMove={() => move(asked)}
          onClose={() => dialog.current?.close()}
        />
      </dialog>
    </>
  );
}

interface ReasonProps {
  readonly asked: QuoteMoveName;
  readonly reason: string;
  readonly busy: boolean;
  readonly onReason: (reason: string) => void;
  readonly onMove: () => void;
  readonly onClose: () => void;
}

function MoveReason({ asked, reason, busy, onReason, onMove, onClose }: ReasonProps) {
  return (
    <>
      <label className={styles.field}>
        {MOVES[asked].title}
        <input
          className={styles.input}
          value={reason}
          maxLength={1000}
          autoComplete="off"
          onChange={({ target }) => onReason(target.value)}
        />
      </label>
      <div className={styles.row}>
        <button type="button" className={styles.main} disabled={busy || reason.trim() === ''} onClick={onMove}>
          {MOVES[asked].done}
        </button>
        <button type="button" className={styles.button} disabled={busy} onClick={onClose}>
          Leave it as it is
        </button>
      </div>
    </>
  );
}
