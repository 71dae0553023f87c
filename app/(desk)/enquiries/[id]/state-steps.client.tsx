'use client';

import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from './enquiry-header.module.css';

interface StateStepsProps {
  readonly enquiryId: number;
  readonly state: string;
  readonly steps: readonly string[];
}

const WORDS: Readonly<Record<string, string>> = {
  new: 'Back to new',
  'being worked': 'Start the work',
  declined: 'Declined',
  lapsed: 'Let it lapse',
};

/** The steps that a person may take from here; one that ends the enquiry asks why. */
export function StateSteps({ enquiryId, state, steps }: StateStepsProps) {
  const router = useRouter();
  const [trouble, setTrouble] = useState('');
  const [asked, setAsked] = useState('');
  const [why, setWhy] = useState('');
  const dialog = useRef<HTMLDialogElement>(null);

  async function move(to: string): Promise<void> {
    const body = { from: state, to, why: why.trim() };
    const sent = await send({ method: 'POST', path: `/api/v1/enquiries/${enquiryId}/moves`, body });
    setTrouble(sent.ok ? '' : sent.sentence);
    if (!sent.ok) return;
    dialog.current?.close();
    setWhy('');
    router.refresh();
  }

  function press(step: string): void {
    if (step === 'new' || step === 'being worked') {
      void move(step);
      return;
    }
    setAsked(step);
    dialog.current?.showModal();
  }

  return (
    <>
      {steps.map((step) => (
        <button key={step} type="button" onClick={() => press(step)}>
          {step === 'being worked' && state !== 'new' ? 'Take it up again' : (WORDS[step] ?? step)}
        </button>
      ))}
      {trouble !== '' && (
        <p className={`notice refusal ${styles.trouble}`} role="alert">
          {trouble}
        </p>
      )}
      <dialog ref={dialog} aria-labelledby="step-asked">
        <form
          method="dialog"
          onSubmit={(event) => {
            event.preventDefault();
            void move(asked);
          }}
        >
          <h2 id="step-asked">Make it {asked}?</h2>
          <label htmlFor="step-why">Why (it helps with the next one)</label>
          <input
            id="step-why"
            value={why}
            maxLength={500}
            onChange={(event) => setWhy(event.target.value)}
            style={{ width: '100%' }}
          />
          <p className="acts">
            <button className="main" type="submit">
              Yes, {asked}
            </button>
            <button type="button" onClick={() => dialog.current?.close()}>
              Leave it
            </button>
          </p>
        </form>
      </dialog>
    </>
  );
}
