'use client';

import { type FormEvent, useState } from 'react';
import type { WorkOrderView } from '#lib/services/yard/work/list-work-orders.ts';
import { AmountField, amountIn } from '../../_blocks/amount-field.client.tsx';
import styles from '../../_blocks/moves.module.css';
import { SaidLine } from '../../_blocks/said.tsx';
import { useDeed } from '../../_blocks/use-deed.client.tsx';

interface RowProps {
  readonly order: WorkOrderView;
  readonly mayDo: boolean;
  readonly currency: string;
}

/** One work order: what, on which unit, where it stands; begin it, end it with what was found. */
export function WorkRow({ order, mayDo, currency }: RowProps) {
  const { busy, said, run } = useDeed();
  const [isEnding, setEnding] = useState(false);
  const path = `/api/v1/yard/work-orders/${order.number}`;
  return (
    <li>
      <div className={styles.what}>
        <strong className="tag">{order.number}</strong> {order.kind} of <strong>{order.serial}</strong>, {order.name}
        <small className="beside">
          {order.reason} · {order.place} · {order.unitState}
          {order.begunBy === '' ? '' : ` · ${order.begunBy} is at it`}
        </small>
      </div>
      {order.waitsFor === '' ? null : <span className="mark warning">wash first: {order.waitsFor}</span>}
      {!mayDo || order.waitsFor !== '' ? null : (
        <>
          {order.state === 'open' ? (
            <button
              type="button"
              aria-label={`Begin ${order.number}`}
              disabled={busy}
              onClick={() => run({ path: `${path}/begin`, words: () => `${order.number} is begun.` })}
            >
              Begin
            </button>
          ) : null}
          <button
            type="button"
            className="main"
            aria-label={`Done ${order.number}`}
            onClick={() => setEnding(!isEnding)}
          >
            Done…
          </button>
        </>
      )}
      {isEnding ? (
        <EndForm
          order={order}
          currency={currency}
          busy={busy}
          onEnd={(body) =>
            run<{ readonly unitState: string }>({
              path: `${path}/end`,
              body,
              words: ({ unitState }) => `${order.serial} is ${unitState}.`,
            })
          }
        />
      ) : null}
      <SaidLine said={said} />
    </li>
  );
}

const RESULTS = [
  { kind: 'fit', words: '✓ Fit for hire' },
  { kind: 'repair', words: '✗ Needs a repair' },
  { kind: 'retired', words: '⊘ Retire it' },
] as const;

interface EndProps {
  readonly order: WorkOrderView;
  readonly currency: string;
  readonly busy: boolean;
  readonly onEnd: (body: object) => void;
}

function EndForm({ order, currency, busy, onEnd }: EndProps) {
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const text = (name: string) => String(form.get(name) ?? '').trim();
    const number = (name: string) => Number(text(name).replace(',', '.')) || 0;
    onEnd({
      result: text('result'),
      done: text('done'),
      hours: number('hours'),
      partsMinor: amountIn({ form, name: 'parts', currency }),
      dueOn: text('dueOn') === '' ? null : text('dueOn'),
    });
  };
  return (
    <form className={`notice ${styles.stack}`} onSubmit={submit} aria-label={`End ${order.number}`}>
      <fieldset className={styles.choice}>
        <legend>What came of it?</legend>
        {RESULTS.map(({ kind, words }) => (
          <label key={kind} className={styles.tick}>
            <input type="radio" name="result" value={kind} defaultChecked={kind === 'fit'} /> {words}
          </label>
        ))}
      </fieldset>
      <label>
        Found and done
        <input name="done" autoComplete="off" />
      </label>
      <div className="fields">
        <label>
          Hours
          <input name="hours" inputMode="decimal" autoComplete="off" />
        </label>
        <AmountField label="Parts" name="parts" currency={currency} />
        {order.asksDue === null ? null : (
          <label>
            Next {order.asksDue} due on
            <input name="dueOn" type="date" />
          </label>
        )}
      </div>
      <p className="soft">The maker’s data and competent persons decide whether it is fit; this only writes it down.</p>
      <div>
        <button type="submit" className="main" disabled={busy}>
          Close {order.number}
        </button>
      </div>
    </form>
  );
}
