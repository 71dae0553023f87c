'use client';

import type { FormEvent } from 'react';
import type { CountedPieces } from '#lib/services/yard/back/counted-pieces.ts';
import type { ReturnView } from '#lib/services/yard/back/open-back.ts';
import styles from '../../../_blocks/moves.module.css';
import { SaidLine } from '../../../_blocks/said.tsx';
import { type Doing, useDeed } from '../../../_blocks/use-deed.client.tsx';

interface CountedProps {
  readonly current: ReturnView;
  readonly counted: readonly CountedPieces[];
}

/** Counted pieces: how many are back with this return, and of what is sold how many are unused. */
export function BackCounted({ current, counted }: CountedProps) {
  const doing = useDeed();
  if (counted.length === 0) return null;
  return (
    <section className="panel" aria-label="Counted pieces">
      <h2>Count these</h2>
      <SaidLine said={doing.said} />
      <ul className={styles.list}>
        {counted.map((one) => (
          <CountedRow key={one.model} one={one} current={current} doing={doing} />
        ))}
      </ul>
    </section>
  );
}

interface RowProps {
  readonly one: CountedPieces;
  readonly current: ReturnView;
  readonly doing: Doing;
}

function CountedRow({ one, current, doing }: RowProps) {
  const here = one.returns.find(({ returnId }) => returnId === current.id);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const back = Number(form.get('back'));
    doing.run({
      path: `/api/v1/yard/returns/${current.id}/counts`,
      body: { model: one.model, back, unused: Number(form.get('unused') ?? 0) },
      words: () => `${back} of ${one.model} are back.`,
    });
  };
  return (
    <li>
      <div className={styles.what}>
        <strong className="tag">{one.model}</strong> {one.name}
        <small className="beside">
          {one.sent} sent, {one.back} back so far{one.isSold ? ', sold' : ''}
        </small>
      </div>
      <form className={styles.row} onSubmit={submit}>
        <label>
          Back
          <input
            className={styles.number}
            name="back"
            type="number"
            inputMode="numeric"
            min={0}
            defaultValue={here?.back ?? ''}
            aria-label={`${one.model} back`}
            required
          />
        </label>
        {one.isSold ? (
          <label>
            Unused of them
            <input
              className={styles.number}
              name="unused"
              type="number"
              inputMode="numeric"
              min={0}
              defaultValue={here?.unused ?? 0}
              aria-label={`${one.model} unused`}
            />
          </label>
        ) : null}
        <button type="submit" disabled={doing.busy} aria-label={`Keep the count of ${one.model}`}>
          Keep
        </button>
      </form>
    </li>
  );
}
