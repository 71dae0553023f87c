'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { useWords } from '#app/_ui/shown-forms.client.tsx';
import { keepDone } from '#app/(desk)/enquiries/[id]/_why/repair-done.client.tsx';

interface StartLaterProps {
  readonly id: number;
  readonly version: number;
  /** The site as it was entered, for taking it back. */
  readonly siteJson: Readonly<Record<string, unknown>>;
  readonly startsOn: string;
  /** The same day as it is written. */
  readonly on: string;
  readonly sentence: string;
}

/** Moves the start of the hire to a day on which all of it can be there, plans anew, and keeps what undoes it. */
export function StartLater({ id, version, siteJson, startsOn, on, sentence }: StartLaterProps) {
  const router = useRouter();
  const words = useWords();
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');
  async function begin(): Promise<void> {
    setBusy(true);
    setProblem('');
    const path = `/api/v1/enquiries/${id}`;
    const sent = await send({ path, method: 'PATCH', body: { version, site: { ...siteJson, starts_on: startsOn } } });
    if (sent.ok) {
      const undo = { edits: [], enquiry: { site: siteJson } };
      const { version: now } = sent.value as { readonly version: number };
      keepDone(id, { action: `Start on ${on}`, told: { sentence }, lines: 0, version: now, undo });
      await send({ path: `${path}/plan`, method: 'POST' });
    } else setProblem(sent.sentence);
    setBusy(false);
    router.refresh();
  }
  return (
    <>
      <p className={styles.offer}>
        <span>{words(sentence)}</span>
        <button type="button" className={styles.offerButton} disabled={busy} onClick={begin}>
          {busy ? 'Taking it…' : `${words(`Start on ${on}`)} and plan again`}
        </button>
      </p>
      {problem === '' ? null : (
        <p className={styles.refused} role="alert">
          {problem}
        </p>
      )}
    </>
  );
}
