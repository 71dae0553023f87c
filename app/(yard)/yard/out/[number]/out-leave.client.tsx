'use client';

import { type FormEvent, useState } from 'react';
import type { LoadQuestion } from '#lib/stock/load-check.ts';
import styles from '../../../_blocks/moves.module.css';
import { SaidLine } from '../../../_blocks/said.tsx';
import { SignaturePad, type Stroke } from '../../../_blocks/signature-pad.client.tsx';
import { useDeed } from '../../../_blocks/use-deed.client.tsx';
import { useWaitingScans } from '../../../_blocks/use-scan-queue.client.tsx';

interface LeaveProps {
  readonly number: string;
  readonly deliveryId: number;
  readonly units: number;
  readonly questions: readonly LoadQuestion[];
  readonly points: readonly string[];
}

/** The look at the load, the instruction, and the hand-over with a signature, drawn or typed. */
export function OutLeave({ number, deliveryId, units, questions, points }: LeaveProps) {
  const { busy, said, run } = useDeed();
  const waiting = useWaitingScans(number).length;
  const [how, setHow] = useState<'drawn' | 'typed'>('drawn');
  const [strokes, setStrokes] = useState<readonly Stroke[]>([]);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const text = (name: string) => String(form.get(name) ?? '');
    const name = text('signedName');
    run<{ readonly sequence: number }>({
      path: `/api/v1/yard/deliveries/${deliveryId}/leaving`,
      body: {
        checks: form.getAll('check').map(String),
        loadedBy: text('loadedBy'),
        vehicle: text('vehicle'),
        instructedBy: text('instructedBy'),
        instruction: form.getAll('point').map(String),
        handedTo: text('handedTo'),
        signature: how === 'typed' ? { how, name } : { how, name, strokes },
      },
      words: ({ sequence }) => `Delivery ${sequence} has left.`,
    });
  };
  return (
    <form className={`panel ${styles.stack}`} onSubmit={submit} noValidate aria-label="Before it leaves">
      <h2>Before it leaves</h2>
      <fieldset className={styles.checks}>
        <legend>Look at the load</legend>
        {questions.map(({ id, words, source }) => (
          <label key={id} className={styles.tick} title={source}>
            <input type="checkbox" name="check" value={id} /> {words}
          </label>
        ))}
      </fieldset>
      <div className="fields">
        <label>
          Loaded by
          <input name="loadedBy" autoComplete="off" />
        </label>
        <label>
          Vehicle
          <input name="vehicle" autoComplete="off" />
        </label>
      </div>
      <fieldset className={styles.checks}>
        <legend>Instruction, point by point</legend>
        {points.map((point) => (
          <label key={point} className={styles.tick}>
            <input type="checkbox" name="point" value={point} /> {point}
          </label>
        ))}
      </fieldset>
      <People />
      <SignatureChoice how={how} onChange={setHow} />
      {how === 'drawn' ? <SignaturePad strokes={strokes} onChange={setStrokes} /> : null}
      <p className="soft">
        Local rules, the carrier’s terms and trained persons decide what may travel and how; this list approves nothing.
      </p>
      <div>
        <button type="submit" className="main" disabled={busy || units === 0 || waiting > 0}>
          It leaves
        </button>
      </div>
      <StillWaiting waiting={waiting} />
      <SaidLine said={said} />
    </form>
  );
}

/** What was scanned and has not arrived would not be on the delivery. */
function StillWaiting({ waiting }: { readonly waiting: number }) {
  if (waiting === 0) return null;
  return (
    <p className="notice warning">
      {waiting} {waiting === 1 ? 'scan waits' : 'scans wait'} in this browser: it can leave once they are sent.
    </p>
  );
}

function People() {
  return (
    <div className="fields">
      <label>
        Instruction given by
        <input name="instructedBy" autoComplete="off" />
      </label>
      <label>
        Handed over to
        <input name="handedTo" autoComplete="off" />
      </label>
      <label>
        Name of who signs
        <input name="signedName" autoComplete="off" />
      </label>
    </div>
  );
}

interface ChoiceProps {
  readonly how: 'drawn' | 'typed';
  readonly onChange: (how: 'drawn' | 'typed') => void;
}

function SignatureChoice({ how, onChange }: ChoiceProps) {
  return (
    <fieldset className={styles.choice}>
      <legend>Signature</legend>
      <label className={styles.tick}>
        <input type="radio" name="how" checked={how === 'drawn'} onChange={() => onChange('drawn')} /> Sign on the pad
      </label>
      <label className={styles.tick}>
        <input type="radio" name="how" checked={how === 'typed'} onChange={() => onChange('typed')} /> The typed name
      </label>
    </fieldset>
  );
}
