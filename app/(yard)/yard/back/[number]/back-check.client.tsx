'use client';

import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { AwaitedPiece, ReturnView } from '#lib/services/yard/back/open-back.ts';
import { beep } from '../../../_blocks/beep.ts';
import styles from '../../../_blocks/moves.module.css';
import { SaidLine } from '../../../_blocks/said.tsx';
import { ScanField } from '../../../_blocks/scan-field.client.tsx';
import { useDeed } from '../../../_blocks/use-deed.client.tsx';
import { BackPiece, type Seen } from './back-piece.client.tsx';

interface CheckProps {
  readonly current: ReturnView;
  readonly awaited: readonly AwaitedPiece[];
}

/** Check-in piece by piece: scan it, say how it is, next. */
export function BackCheck({ current, awaited }: CheckProps) {
  const { busy, said, say, run } = useDeed();
  const [piece, setPiece] = useState<AwaitedPiece | null>(null);
  const path = `/api/v1/yard/returns/${current.id}/pieces`;
  const take = async (text: string) => {
    const answer = await send<{ readonly serial: string }>({
      method: 'GET',
      path: `${path}?scan=${encodeURIComponent(text)}`,
    });
    const found = answer.ok ? awaited.find(({ serial }) => serial === answer.value.serial) : undefined;
    beep(found === undefined ? 'bad' : 'good');
    setPiece(found ?? null);
    say(answer.ok ? null : { tone: 'refusal', words: answer.sentence });
  };
  const check = async (one: AwaitedPiece, seen: Seen) => {
    const answer = await run<{ readonly unitState: string; readonly orders: readonly string[] }>({
      path,
      body: { ...seen, scan: one.serial },
      words: ({ unitState, orders }) =>
        `${one.serial}: ${unitState}${orders.length === 0 ? '' : `, ${orders.join(', ')} opened`}.`,
    });
    if (answer.ok) setPiece(null);
  };
  return (
    <section className="panel" aria-label="Check in">
      <h2>
        Check in, return {current.sequence}: {awaited.length} awaited
      </h2>
      <p className={current.contamination === 'none' ? 'soft' : 'notice warning'}>
        Declared: {current.contaminationWords}.
        {current.contamination === 'none' ? '' : ' Every piece goes to quarantine and is washed first.'}
      </p>
      <ScanField label="Scan a piece" onScan={take} />
      {piece === null ? null : (
        <BackPiece
          key={piece.serial}
          piece={piece}
          busy={busy}
          onSeen={(seen) => check(piece, seen)}
          onLeave={() => setPiece(null)}
        />
      )}
      <SaidLine said={said} />
      <ul className={styles.list} aria-label="Awaited">
        {awaited.map((one) => (
          <li key={one.serial}>
            <Named piece={one} />
            <span className={styles.acts}>
              <button
                type="button"
                aria-label={`${one.serial} is good`}
                disabled={busy}
                onClick={() => check(one, GOOD)}
              >
                ✓ Good
              </button>
              <button type="button" aria-label={`${one.serial} is not as it should be`} onClick={() => setPiece(one)}>
                Not good…
              </button>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Which piece it is, and what is already known to be wrong with it. */
function Named({ piece }: { readonly piece: AwaitedPiece }) {
  return (
    <div className={styles.what}>
      <strong className="tag">{piece.serial}</strong> {piece.name}
      {piece.isLate ? <span className={`mark warning ${styles.beside}`}>late</span> : null}
      {piece.state === 'lost' ? <span className={`mark warning ${styles.beside}`}>recorded as missing</span> : null}
    </div>
  );
}

const GOOD: Seen = {
  condition: 'good',
  runHours: null,
  missingParts: '',
  note: '',
  sawOverload: false,
  repairHours: 0,
  repairPartsMinor: 0,
};
