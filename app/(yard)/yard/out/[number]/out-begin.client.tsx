'use client';

import { useState } from 'react';
import type { OutUnit } from '#lib/services/yard/out/open-out.ts';
import styles from '../../../_blocks/moves.module.css';
import { SaidLine } from '../../../_blocks/said.tsx';
import { useDeed } from '../../../_blocks/use-deed.client.tsx';

const WAYS = ['road', 'air', 'sea'] as const;

interface BeginProps {
  readonly number: string;
  readonly waiting: readonly OutUnit[];
  readonly maySend: boolean;
}

/** Begins a delivery of what is picked; how it travels decides what is looked at before it leaves. */
export function OutBegin({ number, waiting, maySend }: BeginProps) {
  const { busy, said, run } = useDeed();
  const [transport, setTransport] = useState<(typeof WAYS)[number]>('road');
  if (waiting.length === 0) return <p className="notice">Nothing of this booking is picked and waiting to leave.</p>;
  return (
    <section className="panel" aria-label="Begin loading">
      <h2>
        {waiting.length} {waiting.length === 1 ? 'piece waits' : 'pieces wait'} to be loaded
      </h2>
      <fieldset className={styles.choice}>
        <legend>Goes by</legend>
        {WAYS.map((way) => (
          <label key={way} className={styles.tick}>
            <input type="radio" name="transport" checked={transport === way} onChange={() => setTransport(way)} />
            {way}
          </label>
        ))}
      </fieldset>
      <button
        type="button"
        className="main"
        disabled={busy || !maySend}
        onClick={() =>
          run({
            path: `/api/v1/yard/bookings/${number}/deliveries`,
            body: { transport },
            words: () => 'Loading has begun.',
          })
        }
      >
        Begin loading
      </button>
      <SaidLine said={said} />
    </section>
  );
}
