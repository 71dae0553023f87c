'use client';

import type { FormEvent } from 'react';
import styles from '../../_blocks/moves.module.css';
import { SaidLine } from '../../_blocks/said.tsx';
import { useDeed } from '../../_blocks/use-deed.client.tsx';

const KINDS = ['inspection', 'repair', 'calibration', 'cleaning', 'wash'] as const;

/** Opens a work order by hand; the unit is out of hire from then on. */
export function WorkNew() {
  const { busy, said, run } = useDeed();
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const target = event.currentTarget;
    const form = new FormData(target);
    run<{ readonly number: string }>({
      path: '/api/v1/yard/work-orders',
      body: { scan: String(form.get('scan')), kind: String(form.get('kind')), reason: String(form.get('reason')) },
      words: ({ number }) => `${number} is open.`,
    }).then((answer) => {
      if (answer.ok) target.reset();
    });
  };
  return (
    <details className="panel">
      <summary>Open a work order</summary>
      <form className={styles.stack} onSubmit={submit} aria-label="Open a work order">
        <div className="fields">
          <label>
            Unit: scan or type
            <input name="scan" autoComplete="off" />
          </label>
          <label>
            What
            <select name="kind">
              {KINDS.map((kind) => (
                <option key={kind}>{kind}</option>
              ))}
            </select>
          </label>
          <label>
            Why
            <input name="reason" autoComplete="off" />
          </label>
        </div>
        <div>
          <button type="submit" className="main" disabled={busy}>
            Open it
          </button>
        </div>
        <SaidLine said={said} />
      </form>
    </details>
  );
}
