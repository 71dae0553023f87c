'use client';
import { useRouter } from 'next/navigation';
import { useEffect, useState, useTransition } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import type { StudyKind, StudyView } from '#lib/services/plans/study-enquiry.ts';

const POLL_MS = 1200;

interface StudyRunProps {
  readonly enquiryId: number;
  readonly kind: StudyKind;
  readonly state: StudyView['state'];
  /** What the button says, and what is worked out: “plans for other days”. */
  readonly words: { readonly start: string; readonly what: string };
}

/** Starts, watches and halts working out other terms; what is there is shown as it comes. */
export function StudyRun({ enquiryId, kind, state, words }: StudyRunProps) {
  const router = useRouter();
  const path = `/api/v1/enquiries/${enquiryId}/studies/${kind}`;
  const [problem, setProblem] = useState('');
  const [busy, setBusy] = useState(false);
  const [isReading, startReading] = useTransition();
  const isRunning = state.kind === 'running';

  // A page that is asked for again before it came would throw the first answer away: one reading at a time.
  useEffect(() => {
    if (!isRunning || isReading) return;
    const timer = setTimeout(() => startReading(() => router.refresh()), POLL_MS);
    return () => clearTimeout(timer);
  }, [isRunning, isReading, router]);

  async function act(method: 'POST' | 'DELETE'): Promise<void> {
    setBusy(true);
    const sent = await send({ path, method });
    setBusy(false);
    setProblem(sent.ok ? '' : sent.sentence);
    router.refresh();
  }

  return (
    <div aria-live="polite" className={styles.screenOnly}>
      {state.kind === 'running' ? (
        <div className={styles.row}>
          <progress max={state.of} value={state.done} aria-label={`Working out ${words.what}`} />
          <span>
            {state.done} of {state.of} {words.what} {state.halting ? '; halting' : ''}
          </span>
          <button type="button" className={styles.small} disabled={busy || state.halting} onClick={() => act('DELETE')}>
            Halt and keep these
          </button>
        </div>
      ) : (
        <p className={styles.row}>
          {state.kind === 'failed' ? <span className={styles.refused}>{state.sentence}</span> : null}
          {state.kind === 'ready' && !state.current ? (
            <span className={styles.notice}>These are from before the last change of the enquiry.</span>
          ) : null}
          {state.kind === 'ready' && state.current && !state.whole ? (
            <span className={styles.soft}>Halted before all were worked out.</span>
          ) : null}
          {state.kind === 'ready' && state.current && state.whole ? null : (
            <button type="button" className={styles.button} disabled={busy} onClick={() => act('POST')}>
              {state.kind === 'none' ? words.start : 'Work them out again'}
            </button>
          )}
        </p>
      )}
      {problem === '' ? null : (
        <p className={styles.refused} role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}
