'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';

interface VisitUseProps {
  readonly visitId: number;
  readonly setAside: string;
}

/** Sets a record aside with a reason, or uses it again. */
export function VisitUse({ visitId, setAside }: VisitUseProps) {
  const router = useRouter();
  const [reason, setReason] = useState('');
  const [trouble, setTrouble] = useState('');

  async function change(use: 'yes' | 'no'): Promise<void> {
    const sent = await send({ method: 'PATCH', path: `/api/v1/visits/${visitId}`, body: { use, reason } });
    setTrouble(sent.ok ? '' : sent.sentence);
    if (!sent.ok) return;
    setReason('');
    router.refresh();
  }

  return (
    <form
      className={styles.row}
      onSubmit={(event) => {
        event.preventDefault();
        void change(setAside === '' ? 'no' : 'yes');
      }}
    >
      {setAside === '' ? (
        <>
          <label className={styles.field}>
            Do not use it, because
            <input
              className={styles.input}
              value={reason}
              placeholder="like wrong valve"
              onChange={(event) => setReason(event.target.value)}
            />
          </label>
          <button type="submit" className={styles.small} disabled={reason.trim() === ''}>
            Set the record aside
          </button>
        </>
      ) : (
        <>
          <span className={styles.warning}>set aside: {setAside}</span>
          <button type="submit" className={styles.small}>
            Use it again
          </button>
        </>
      )}
      <span role="alert">{trouble}</span>
    </form>
  );
}
