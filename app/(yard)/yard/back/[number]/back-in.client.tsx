'use client';

import { useState } from 'react';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import type { PieceView, ReturnView } from '#lib/services/yard/back/open-back.ts';
import styles from '../../../_blocks/moves.module.css';
import { SaidLine } from '../../../_blocks/said.tsx';
import { type Doing, useDeed } from '../../../_blocks/use-deed.client.tsx';
import type { ScanQueue } from '../../../_blocks/use-scan-queue.client.tsx';
import { TakePhoto } from './take-photo.client.tsx';

interface InProps {
  readonly returns: readonly ReturnView[];
  readonly queue: ScanQueue;
}

/** What is in: each return with its pieces, where each went, its photographs, and taking a check-in back. */
export function BackIn({ returns, queue }: InProps) {
  const doing = useDeed();
  const filled = returns.filter(({ pieces }) => pieces.length > 0);
  if (filled.length === 0) return null;
  return (
    <section className="panel" aria-label="Checked in">
      <h2>Checked in</h2>
      <SaidLine said={doing.said} />
      {filled.map((one) => (
        <div key={one.id}>
          <h3>
            Return {one.sequence}, <ShownDate on={one.arrivedOn} />
            {one.broughtBy === '' ? '' : `, brought by ${one.broughtBy}`}: {one.contaminationWords}
          </h3>
          <ul className={styles.list}>
            {one.pieces.map((piece) => (
              <PieceRow key={piece.id} piece={piece} doing={doing} queue={queue} />
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}

const SIGNS: Readonly<Record<string, string>> = { good: '✓', dirty: '≈', damaged: '✗', missing: '?' };

interface RowProps {
  readonly piece: PieceView;
  readonly doing: Doing;
  readonly queue: ScanQueue;
}

function PieceRow({ piece, doing, queue }: RowProps) {
  const told = [
    piece.note,
    piece.missingParts === '' ? '' : `missing from it: ${piece.missingParts}`,
    piece.sawOverload ? 'saw an overload' : '',
    piece.runHours === null ? '' : `${piece.runHours} h`,
  ].filter((part) => part !== '');
  return (
    <li>
      <div className={styles.what}>
        <strong className="tag">{piece.serial}</strong> {piece.name}
        <small className="beside">{told.join(' · ')}</small>
      </div>
      <span className={piece.condition === 'good' ? 'mark' : 'mark warning'}>
        {SIGNS[piece.condition] ?? ''} {piece.condition}
      </span>
      <span className="soft">{[piece.unitState, ...piece.orders].join(', ')}</span>
      {piece.photos.map((id) => (
        <a key={id} href={`/api/v1/yard/photos/${id}`} target="_blank" rel="noreferrer">
          {/* biome-ignore lint/performance/noImgElement: bytes from the house itself, small and private */}
          <img className={styles.photo} src={`/api/v1/yard/photos/${id}`} alt={`${piece.serial}, photograph P-${id}`} />
        </a>
      ))}
      {piece.isSettled ? (
        <span className="soft">on a note</span>
      ) : (
        <PieceTools piece={piece} doing={doing} queue={queue} />
      )}
    </li>
  );
}

function PieceTools({ piece, doing, queue }: RowProps) {
  const [isAsked, setAsked] = useState(false);
  return (
    <>
      <TakePhoto serial={piece.serial} queue={queue} />
      {isAsked ? (
        <button
          type="button"
          className="danger"
          disabled={doing.busy}
          onClick={() =>
            doing.run({
              path: `/api/v1/yard/pieces/${piece.id}/undo`,
              body: { why: 'checked in by mistake' },
              words: () => `${piece.serial} is awaited again.`,
            })
          }
        >
          Yes, it was a mistake
        </button>
      ) : (
        <button type="button" aria-label={`Take the check-in of ${piece.serial} back`} onClick={() => setAsked(true)}>
          Undo
        </button>
      )}
    </>
  );
}
