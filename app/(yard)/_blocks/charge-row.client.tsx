'use client';

import { useState } from 'react';
import { ShownMoney, ShownWords } from '#app/_ui/shown-forms.client.tsx';
import { currencyDecimals } from '#lib/money/currency.ts';
import type { ChargeView } from '#lib/services/yard/back/open-charges.ts';
import styles from './moves.module.css';
import { SaidLine } from './said.tsx';
import { type Doing, useDeed } from './use-deed.client.tsx';

interface RowProps {
  readonly charge: ChargeView;
  readonly number: string;
  readonly currency: string;
  readonly leavesOut: readonly string[];
  readonly mayDecide: boolean;
}

/** One charge: what it is for, how it came about, and the word on it. */
export function ChargeRow({ charge, number, currency, leavesOut, mayDecide }: RowProps) {
  const doing = useDeed();
  const { word } = charge;
  const title = `${charge.label}: ${charge.name} ${charge.mark}`.trim();
  return (
    <article className={styles.charge} aria-label={title}>
      <header>
        <h3>{title}</h3>
        <strong className={styles.money}>
          <ShownMoney minor={word?.netMinor ?? charge.proposedMinor} currency={currency} />
        </strong>
      </header>
      <p className="soft">
        <ShownWords>{charge.sentence}</ShownWords>
      </p>
      {charge.asksCause && mayDecide && word === null ? (
        <Cause charge={charge} number={number} leavesOut={leavesOut} doing={doing} />
      ) : null}
      {word === null ? null : (
        <p>
          <span className={word.decision === 'approved' ? 'mark' : 'mark warning'}>{word.decision}</span> by {word.who}
          {word.reason === '' ? '' : `: ${word.reason}`}
        </p>
      )}
      {mayDecide ? <Words charge={charge} number={number} currency={currency} doing={doing} /> : null}
      <SaidLine said={doing.said} />
    </article>
  );
}

interface CauseProps extends Pick<RowProps, 'charge' | 'number' | 'leavesOut'> {
  readonly doing: Doing;
}

/** How it happened decides whether the damage waiver covers it. */
function Cause({ charge, number, leavesOut, doing }: CauseProps) {
  const say = (value: string) => {
    if (value === '') return;
    const cause =
      value === 'covered' ? { kind: 'covered' } : { kind: 'left out', words: leavesOut[Number(value)] ?? '' };
    doing.run({
      path: `/api/v1/yard/bookings/${number}/causes`,
      body: { about: charge.about, cause },
      words: () => 'That is noted; look at the amount again.',
    });
  };
  return (
    <label>
      How did it happen?
      <select defaultValue="" disabled={doing.busy} onChange={(event) => say(event.target.value)}>
        <option value="">{charge.open === 'cause' ? 'Not known yet' : 'As it stands in the sentence above'}</option>
        <option value="covered">Covered by the damage waiver</option>
        {leavesOut.map((words, index) => (
          <option key={words} value={index}>
            Left out: {words}
          </option>
        ))}
      </select>
    </label>
  );
}

interface WordsProps extends Pick<RowProps, 'charge' | 'number' | 'currency'> {
  readonly doing: Doing;
}

function Words({ charge, number, currency, doing }: WordsProps) {
  const decide = (decision: object | null, words: string) =>
    doing.run({
      path: `/api/v1/yard/bookings/${number}/charges`,
      body: { key: charge.key, proposedMinor: charge.proposedMinor, decision },
      words: () => words,
    });
  if (charge.word !== null)
    return (
      <button type="button" disabled={doing.busy} onClick={() => decide(null, 'It is to be decided again.')}>
        Decide again
      </button>
    );
  const name = `${charge.label} ${charge.mark}`;
  return (
    <div className={styles.stack}>
      <div className="tools">
        <button
          type="button"
          className="main"
          aria-label={`Approve ${name}`}
          disabled={doing.busy || charge.open !== null}
          onClick={() => decide({ kind: 'approved' }, 'Approved.')}
        >
          Approve
        </button>
        {charge.open === 'cause' ? <span className="soft">Say first how it happened.</span> : null}
        {charge.open === 'price' ? <span className="soft">Type a price below, or strike it.</span> : null}
      </div>
      <ChangeOrStrike name={name} currency={currency} busy={doing.busy} decide={decide} />
    </div>
  );
}

interface ChangeProps {
  readonly name: string;
  readonly currency: string;
  readonly busy: boolean;
  readonly decide: (decision: object, words: string) => void;
}

function ChangeOrStrike({ name, currency, busy, decide }: ChangeProps) {
  const [amount, setAmount] = useState('');
  const [reason, setReason] = useState('');
  const typed = Math.round(Number(amount.replace(',', '.')) * 10 ** currencyDecimals(currency));
  const isTyped = amount.trim() !== '' && Number.isFinite(typed);
  return (
    <details>
      <summary>Change or strike it</summary>
      <div className={styles.row}>
        <label>
          Amount instead
          <input
            className={styles.number}
            inputMode="decimal"
            value={amount}
            aria-label={`Amount instead for ${name}`}
            onChange={(event) => setAmount(event.target.value)}
          />
        </label>
        <label>
          Reason
          <input value={reason} aria-label={`Reason for ${name}`} onChange={(event) => setReason(event.target.value)} />
        </label>
        <button
          type="button"
          aria-label={`Change ${name}`}
          disabled={busy || !isTyped || reason.trim() === ''}
          onClick={() => decide({ kind: 'changed', net_minor: typed, reason }, 'Changed.')}
        >
          Change
        </button>
        <button
          type="button"
          className="danger"
          aria-label={`Strike ${name}`}
          disabled={busy || reason.trim() === ''}
          onClick={() => decide({ kind: 'struck', reason }, 'Struck.')}
        >
          Strike
        </button>
      </div>
    </details>
  );
}
