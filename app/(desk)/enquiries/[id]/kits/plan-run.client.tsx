'use client';
import { useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import type { PlanState } from '#lib/services/plans/plan-enquiry.ts';
import { PlanTrail } from './plan-trail.tsx';

const POLL_MS = 1000;
const RUN_ENDED = { kind: 'running', note: 'Done; reading the result.' } as const;

interface RunProps {
  readonly enquiryId: number;
  /** A further option of the quote; the enquiry itself where it is left out or 0. */
  readonly slot?: number;
  readonly state: PlanState;
  readonly lines: number;
}

/** Starts, watches and halts planning; when it ends the page is read again. */
export function PlanRun({ enquiryId, slot = 0, state: opened, lines }: RunProps) {
  const router = useRouter();
  const path = `/api/v1/enquiries/${enquiryId}${slot === 0 ? '' : `/options/${slot}`}/plan`;
  const [watched, setWatched] = useState<PlanState | null>(null);
  const [problem, setProblem] = useState('');
  const [busy, setBusy] = useState(false);
  const state = watched ?? opened;
  const running = state.kind === 'running';
  const startedAt = state.kind === 'running' ? state.since : '';

  // What the page was opened with is newer than what was watched before it was read again.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the opened state is the trigger
  useEffect(() => setWatched(null), [opened]);

  useEffect(() => {
    if (!running) return;
    const timer = setInterval(async () => {
      const answer = await send({ path, method: 'GET' });
      if (!answer.ok) return setProblem(answer.sentence);
      setProblem('');
      const next = answer.value as PlanState;
      if (next.kind === 'running') return setWatched(next);
      // Until the page is read again it still shows the old plan, so the end is not told before that; asking for
      // the page a second time would only throw the first answer away.
      clearInterval(timer);
      setWatched({ ...RUN_ENDED, since: startedAt });
      router.refresh();
    }, POLL_MS);
    return () => clearInterval(timer);
  }, [running, startedAt, path, router]);

  async function act(method: 'POST' | 'DELETE'): Promise<void> {
    setBusy(true);
    setProblem('');
    const answer = await send({ path, method });
    setBusy(false);
    if (!answer.ok) return setProblem(answer.sentence);
    if (method === 'POST') setWatched(answer.value as PlanState);
    router.refresh();
  }

  return (
    <div aria-live="polite">
      {running ? (
        <div className={styles.calm}>
          <p>
            <span className={styles.running} aria-hidden="true" /> <strong>Planning.</strong> {state.note}
          </p>
          <p className={styles.soft}>
            It goes on in the background; you may leave this page. <Elapsed since={state.since} />
          </p>
          <PlanTrail trail={state.trail ?? []} />
          <button type="button" className={styles.button} disabled={busy} onClick={() => act('DELETE')}>
            {state.halting ? 'End it at once, keep nothing' : 'Halt and keep the best so far'}
          </button>
        </div>
      ) : (
        <Idle state={state} lines={lines} busy={busy} start={() => act('POST')} />
      )}
      {problem === '' ? null : (
        <p className={styles.refused} role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}

interface IdleProps {
  readonly state: Exclude<PlanState, { kind: 'running' }>;
  readonly lines: number;
  readonly busy: boolean;
  readonly start: () => void;
}

function Idle({ state, lines, busy, start }: IdleProps) {
  if (state.kind === 'ready' && state.current && !state.halted) return null;
  const words = sayIdle(state, lines);
  return (
    <div className={state.kind === 'failed' ? styles.refused : styles.notice}>
      <p>
        <strong>{words.title}</strong> {words.sentence}
      </p>
      <button type="button" className={styles.main} disabled={busy || lines === 0} data-shortcut="plan" onClick={start}>
        {words.button}
      </button>
    </div>
  );
}

function sayIdle(state: IdleProps['state'], lines: number) {
  if (state.kind === 'failed') return { title: 'No plan.', sentence: state.sentence, button: 'Try again' };
  if (state.kind === 'ready' && state.current) {
    return {
      title: 'This planning was halted.',
      sentence:
        'What is shown is the best that was found and was checked; going on may find better, and the other preferences.',
      button: 'Go on planning',
    };
  }
  if (state.kind === 'ready') {
    return {
      title: 'This plan is out of date.',
      sentence: 'The schedule, the site, a choice or the free equipment has changed since it was worked out.',
      button: 'Plan again',
    };
  }
  if (lines === 0) {
    return {
      title: 'Nothing to plan yet.',
      sentence: 'The schedule is empty: take a list in or type a line first.',
      button: 'Start planning',
    };
  }
  return {
    title: 'Not planned yet.',
    sentence: `Planning chooses equipment for ${lines} ${lines === 1 ? 'line' : 'lines'}, shares the work out over the crews and compares four preferences.`,
    button: 'Start planning',
  };
}

function Elapsed({ since }: { readonly since: string }) {
  const [now, setNow] = useState<number | null>(null);
  useEffect(() => {
    setNow(Date.now());
    const timer = setInterval(() => setNow(Date.now()), POLL_MS);
    return () => clearInterval(timer);
  }, []);
  const seconds = now === null ? null : Math.max(0, Math.round((now - Date.parse(since)) / 1000));
  return seconds === null || Number.isNaN(seconds) ? null : <span>{seconds} s so far.</span>;
}
