'use client';

import { useState } from 'react';
import type { PickLine } from '#lib/services/yard/picking/open-picking.ts';
import type { NewScan, QueuedScan } from '../../../_blocks/scan-queue.ts';

interface PickLinesProps {
  readonly lines: readonly PickLine[];
  readonly scans: readonly QueuedScan[];
  readonly onAdd: (scan: NewScan) => void;
}

/** Bay by bay, in the order of the walk. */
export function PickLines({ lines, scans, onAdd }: PickLinesProps) {
  const waiting = new Set(scans.filter(({ state }) => state === 'waiting').map(({ scan }) => scan.code.toUpperCase()));
  return (
    <section className="card" aria-label="Pieces in walking order">
      <h2>Pieces in walking order</h2>
      {lines.length === 0 ? (
        <p className="soft">This booking holds nothing any more.</p>
      ) : (
        <ol className="pick-lines">
          {lines.map((line) => (
            <PickRow key={line.code} line={line} isWaiting={waiting.has(scanCode(line))} onAdd={onAdd} />
          ))}
        </ol>
      )}
    </section>
  );
}

function scanCode({ kind, code }: PickLine): string {
  return kind === 'unit' ? code : `MODEL:${code}`;
}

interface PickRowProps extends Pick<PickLinesProps, 'onAdd'> {
  readonly line: PickLine;
  readonly isWaiting: boolean;
}

function PickRow({ line, isWaiting, onAdd }: PickRowProps) {
  const code = scanCode(line);
  return (
    <li data-picked={line.picked}>
      <span className="bay">
        <small>{line.depot}</small> {line.bay === '' ? '—' : line.bay}
      </span>
      <div className="what">
        <strong className="tag">{line.kind === 'unit' ? line.code : `${line.count} × ${line.code}`}</strong> {line.name}
        {line.why !== null && !line.picked && <small className="beside">Must go. {line.why}</small>}
      </div>
      <RowMark picked={line.picked} isWaiting={isWaiting} />
      {line.picked ? (
        <button
          type="button"
          className="quiet"
          onClick={() => onAdd({ kind: 'undo', code })}
          aria-label={`Undo ${line.code}`}
        >
          Undo
        </button>
      ) : (
        line.kind === 'counted' && (
          <CountPieces line={line} onCount={(count) => onAdd({ kind: 'count', code, count })} />
        )
      )}
    </li>
  );
}

function RowMark({ picked, isWaiting }: { readonly picked: boolean; readonly isWaiting: boolean }) {
  if (isWaiting) return <span className="mark warning">waiting</span>;
  return picked ? <span className="mark good">✓ picked</span> : <span className="mark">to pick</span>;
}

function CountPieces({ line, onCount }: { readonly line: PickLine; readonly onCount: (count: number) => void }) {
  const [text, setText] = useState('');
  return (
    <form
      className="count-pieces"
      onSubmit={(event) => {
        event.preventDefault();
        if (/^\d{1,6}$/.test(text.trim())) onCount(Number(text));
      }}
    >
      <input
        aria-label={`Counted ${line.code}`}
        inputMode="numeric"
        value={text}
        onChange={(event) => setText(event.target.value)}
        placeholder={String(line.count)}
      />
      <button type="submit">Counted</button>
    </form>
  );
}
