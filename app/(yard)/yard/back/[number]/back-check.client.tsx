'use client';

import { useState } from 'react';
import type { AwaitedPiece, ReturnView } from '#lib/services/yard/back/open-back.ts';
import { readScan } from '#lib/stock/scan-code.ts';
import styles from '../../../_blocks/moves.module.css';
import { SaidLine } from '../../../_blocks/said.tsx';
import { ScanField } from '../../../_blocks/scan-field.client.tsx';
import type { QueuedScan } from '../../../_blocks/scan-queue.ts';
import { SoundSwitch } from '../../../_blocks/sound-switch.client.tsx';
import type { ScanQueue } from '../../../_blocks/use-scan-queue.client.tsx';
import { BackPiece, type Seen } from './back-piece.client.tsx';
import { TakePhoto } from './take-photo.client.tsx';

interface CheckProps {
  readonly current: ReturnView;
  readonly awaited: readonly AwaitedPiece[];
  readonly currency: string;
  readonly queue: ScanQueue;
}

type CheckingIn = Extract<QueuedScan['scan'], { readonly kind: 'check in' }>;

/** Check-in piece by piece: scan it, say how it is, next; what is said waits in this browser until the house has it. */
export function BackCheck({ current, awaited, currency, queue }: CheckProps) {
  const [piece, setPiece] = useState<AwaitedPiece | null>(null);
  const waiting = new Map(
    queue.scans.flatMap(({ scan, state }): readonly (readonly [string, CheckingIn])[] =>
      scan.kind === 'check in' && state === 'waiting' ? [[scan.code, scan]] : [],
    ),
  );
  const take = (text: string) => {
    const read = readScan(text);
    const found = read.kind === 'unit' ? awaited.find(({ serial }) => serial === read.serial) : undefined;
    if (found === undefined || waiting.has(found.serial)) {
      setPiece(null);
      queue.add({ kind: 'look', code: text, return: current.id });
      return;
    }
    queue.sound('good');
    queue.setSaid(null);
    setPiece(found);
  };
  const check = (one: AwaitedPiece, seen: Seen) => {
    queue.add({ kind: 'check in', code: one.serial, return: current.id, seen });
    setPiece(null);
  };
  return (
    <section className="panel" aria-label="Check in">
      <div className="heading">
        <h2>
          Check in, return {current.sequence}: {awaited.length} awaited
        </h2>
        <SoundSwitch isMuted={queue.isMuted} onToggle={queue.toggleSound} />
      </div>
      <p className={current.contamination === 'none' ? 'soft' : 'notice warning'}>
        Declared: {current.contaminationWords}.
        {current.contamination === 'none' ? '' : ' Every piece goes to quarantine and is washed first.'}
      </p>
      <ScanField label="Scan a piece" onScan={take} />
      {piece === null ? null : (
        <BackPiece
          key={piece.serial}
          piece={piece}
          currency={currency}
          onSeen={(seen) => check(piece, seen)}
          onLeave={() => setPiece(null)}
        />
      )}
      <SaidLine said={queue.said} />
      <ul className={styles.list} aria-label="Awaited">
        {awaited.map((one) => (
          <AwaitedRow
            key={one.serial}
            one={one}
            waits={waiting.get(one.serial)}
            queue={queue}
            onGood={() => check(one, GOOD)}
            onElse={() => setPiece(one)}
          />
        ))}
      </ul>
    </section>
  );
}

interface RowProps {
  readonly one: AwaitedPiece;
  readonly waits: CheckingIn | undefined;
  readonly queue: ScanQueue;
  readonly onGood: () => void;
  readonly onElse: () => void;
}

function AwaitedRow({ one, waits, queue, onGood, onElse }: RowProps) {
  return (
    <li>
      <Named piece={one} />
      {waits === undefined ? (
        <span className={styles.acts}>
          <button type="button" aria-label={`${one.serial} is good`} onClick={onGood}>
            ✓ Good
          </button>
          <button type="button" aria-label={`${one.serial} is not as it should be`} onClick={onElse}>
            Not good…
          </button>
        </span>
      ) : (
        <span className={styles.acts}>
          <span className="mark warning">waiting: {waits.seen.condition}</span>
          <TakePhoto serial={one.serial} queue={queue} />
        </span>
      )}
    </li>
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
