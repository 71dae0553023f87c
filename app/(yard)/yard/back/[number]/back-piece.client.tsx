'use client';

import { type FormEvent, useState } from 'react';
import type { AwaitedPiece } from '#lib/services/yard/back/open-back.ts';
import type { Condition } from '#lib/stock/check-in.ts';
import { AmountField, amountIn } from '../../../_blocks/amount-field.client.tsx';
import styles from '../../../_blocks/moves.module.css';

export interface Seen {
  readonly condition: Condition;
  readonly runHours: number | null;
  readonly missingParts: string;
  readonly note: string;
  readonly sawOverload: boolean;
  readonly repairHours: number;
  readonly repairPartsMinor: number;
}

const CONDITIONS: readonly { readonly kind: Condition; readonly words: string }[] = [
  { kind: 'good', words: '✓ Good' },
  { kind: 'dirty', words: '≈ Dirty' },
  { kind: 'damaged', words: '✗ Damaged' },
  { kind: 'missing', words: '? Missing' },
];

interface PieceProps {
  readonly piece: AwaitedPiece;
  readonly currency: string;
  readonly onSeen: (seen: Seen) => void;
  readonly onLeave: () => void;
}

/** One piece under the eyes of the yard: how it is, what it has run, what is missing from it. */
export function BackPiece({ piece, currency, onSeen, onLeave }: PieceProps) {
  const [condition, setCondition] = useState<Condition>('good');
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const text = (name: string) => String(form.get(name) ?? '').trim();
    const number = (name: string) => Number(text(name).replace(',', '.')) || 0;
    onSeen({
      condition,
      runHours: text('runHours') === '' ? null : number('runHours'),
      missingParts: text('missingParts'),
      note: text('note'),
      sawOverload: form.get('overload') !== null,
      repairHours: number('repairHours'),
      repairPartsMinor: amountIn({ form, name: 'repairParts', currency }),
    });
  };
  return (
    <form className={`notice ${styles.stack}`} onSubmit={submit} aria-label={`Check in ${piece.serial}`}>
      <h3>
        {piece.serial} · {piece.name}
      </h3>
      <fieldset className={styles.choice}>
        <legend>How is it?</legend>
        {CONDITIONS.map(({ kind, words }) => (
          <label key={kind} className={styles.tick}>
            <input
              type="radio"
              name="condition"
              value={kind}
              checked={condition === kind}
              onChange={() => setCondition(kind)}
            />
            {words}
          </label>
        ))}
      </fieldset>
      {condition === 'missing' ? null : <PieceState piece={piece} />}
      <label>
        {condition === 'damaged' ? 'What is broken' : condition === 'missing' ? 'What the crew says' : 'Remark'}
        <input name="note" autoComplete="off" />
      </label>
      {condition === 'damaged' ? (
        <div className="fields">
          <label>
            Repair, hours (a guess)
            <input name="repairHours" inputMode="decimal" autoComplete="off" />
          </label>
          <AmountField label="Parts (a guess)" name="repairParts" currency={currency} />
        </div>
      ) : null}
      <div className="tools">
        <button type="submit" className="main">
          Check it in
        </button>
        <button type="button" onClick={onLeave}>
          Another piece
        </button>
      </div>
    </form>
  );
}

function PieceState({ piece }: { readonly piece: AwaitedPiece }) {
  return (
    <div className="fields">
      {piece.countsHours ? (
        <label>
          Run hours on its counter ({piece.runHours} before)
          <input name="runHours" inputMode="decimal" autoComplete="off" />
        </label>
      ) : null}
      <label>
        Missing from it
        <input name="missingParts" autoComplete="off" />
      </label>
      {piece.isLimiter ? (
        <label className={styles.tick}>
          <input type="checkbox" name="overload" /> It saw an overload
        </label>
      ) : null}
    </div>
  );
}
