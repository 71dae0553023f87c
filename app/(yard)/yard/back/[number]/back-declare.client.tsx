'use client';

import { type FormEvent, useState } from 'react';
import type { BackView } from '#lib/services/yard/back/open-back.ts';
import type { Contamination } from '#lib/stock/check-in.ts';
import styles from '../../../_blocks/moves.module.css';
import { SaidLine } from '../../../_blocks/said.tsx';
import { useDeed } from '../../../_blocks/use-deed.client.tsx';

const DECLARED: readonly { readonly kind: Contamination; readonly words: string }[] = [
  { kind: 'none', words: 'Nothing' },
  { kind: 'water', words: 'Water or silt' },
  { kind: 'sewage', words: 'Sewage' },
  { kind: 'product', words: 'A product' },
  { kind: 'unknown', words: 'Nobody knows' },
];

interface DeclareProps {
  readonly view: BackView;
  readonly isFirst: boolean;
}

/** What it may be contaminated with is asked before anything is touched; a further return begins with the same question. */
export function BackDeclare({ view, isFirst }: DeclareProps) {
  const form = <DeclareForm view={view} />;
  if (isFirst) return form;
  return (
    <details className="panel">
      <summary>Another vehicle came: begin a further return</summary>
      {form}
    </details>
  );
}

function DeclareForm({ view }: { readonly view: BackView }) {
  const { busy, said, run } = useDeed();
  const [contamination, setContamination] = useState<Contamination | null>(null);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    run({
      path: `/api/v1/yard/bookings/${view.number}/returns`,
      body: {
        contamination,
        depot: String(form.get('depot')),
        broughtBy: String(form.get('broughtBy')),
        note: String(form.get('note') ?? ''),
      },
      words: () =>
        contamination === 'none'
          ? 'Now check the pieces in.'
          : 'Gloves on. Everything of it goes to quarantine and is washed.',
    });
  };
  return (
    <form className={`panel ${styles.stack}`} onSubmit={submit} aria-label="Declare">
      <h2>Before you touch it: what is on it?</h2>
      <Choice chosen={contamination} onChoose={setContamination} />
      {contamination === null || contamination === 'none' ? null : (
        <p className="notice warning">
          Gloves, and whatever else your rules ask. All of it goes to quarantine and is washed before anything else.
        </p>
      )}
      <div className="fields">
        {contamination === 'product' || contamination === 'unknown' || contamination === 'sewage' ? (
          <label>
            {contamination === 'product' ? 'Name of the product' : 'What was said of it'}
            <input name="note" autoComplete="off" required={contamination === 'product'} />
          </label>
        ) : null}
        <label>
          Depot
          <select name="depot" defaultValue={view.depot}>
            {view.depots.map(({ code, name }) => (
              <option key={code} value={code}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label>
          Brought by
          <input name="broughtBy" autoComplete="off" />
        </label>
      </div>
      <div>
        <button type="submit" className="main" disabled={busy || contamination === null || !view.mayTake}>
          That is declared
        </button>
      </div>
      <SaidLine said={said} />
    </form>
  );
}

interface ChoiceProps {
  readonly chosen: Contamination | null;
  readonly onChoose: (kind: Contamination) => void;
}

function Choice({ chosen, onChoose }: ChoiceProps) {
  return (
    <fieldset className={styles.choice}>
      <legend>Ask the driver, look, smell nothing</legend>
      {DECLARED.map(({ kind, words }) => (
        <label key={kind} className={styles.tick}>
          <input
            type="radio"
            name="contamination"
            value={kind}
            checked={chosen === kind}
            onChange={() => onChoose(kind)}
          />
          {words}
        </label>
      ))}
    </fieldset>
  );
}
