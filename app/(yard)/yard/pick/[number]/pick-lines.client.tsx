'use client';

import type { PickLine } from '#lib/services/yard/picking/pick-lines.ts';
import { CountPieces } from '../../../_blocks/count-pieces.client.tsx';
import { scanCode } from '../../../_blocks/pick-code.ts';
import { PickMark } from '../../../_blocks/pick-mark.tsx';
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
      <PickMark isPicked={line.picked} isWaiting={isWaiting} />
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
          <CountPieces
            label={`Counted ${line.code}`}
            count={line.count}
            onCount={(count) => onAdd({ kind: 'count', code, count })}
          />
        )
      )}
    </li>
  );
}
