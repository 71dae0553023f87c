'use client';

import type { FormEvent } from 'react';
import type { CountedPieces } from '#lib/services/yard/back/counted-pieces.ts';
import type { ReturnView } from '#lib/services/yard/back/open-back.ts';
import { modelCode } from '#lib/stock/scan-code.ts';
import styles from '../../../_blocks/moves.module.css';
import type { ScanQueue } from '../../../_blocks/use-scan-queue.client.tsx';

interface CountedProps {
  readonly current: ReturnView;
  readonly counted: readonly CountedPieces[];
  readonly queue: ScanQueue;
}

/** Counted pieces: how many are back with this return, and of what is sold how many are unused. */
export function BackCounted({ current, counted, queue }: CountedProps) {
  if (counted.length === 0) return null;
  return (
    <section className="panel" aria-label="Counted pieces">
      <h2>Count these</h2>
      <ul className={styles.list}>
        {counted.map((one) => (
          <CountedRow key={one.model} one={one} current={current} queue={queue} />
        ))}
      </ul>
    </section>
  );
}

interface RowProps {
  readonly one: CountedPieces;
  readonly current: ReturnView;
  readonly queue: ScanQueue;
}

function CountedRow({ one, current, queue }: RowProps) {
  const here = one.returns.find(({ returnId }) => returnId === current.id);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const [back, unused] = [Number(form.get('back')), Number(form.get('unused') ?? 0)];
    queue.add({ kind: 'count back', code: modelCode(one.model), return: current.id, back, unused });
  };
  const waits = queue.scans.some(
    ({ scan, state }) => state === 'waiting' && scan.kind === 'count back' && scan.code === modelCode(one.model),
  );
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
        {waits ? <span className="mark warning">waiting</span> : null}
        <button type="submit" aria-label={`Keep the count of ${one.model}`}>
          Keep
        </button>
      </form>
    </li>
  );
}
