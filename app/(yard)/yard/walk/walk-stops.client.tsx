'use client';

import type { WalkPiece, WalkView } from '#lib/services/yard/picking/open-walk.ts';
import { CountPieces } from '../../_blocks/count-pieces.client.tsx';
import { scanCode } from '../../_blocks/pick-code.ts';
import { PickMark } from '../../_blocks/pick-mark.tsx';
import type { ScanQueue } from '../../_blocks/use-scan-queue.client.tsx';

interface StopsProps {
  readonly view: WalkView;
  readonly queue: ScanQueue;
}

/** Bay by bay in the order of the walk; beside each piece the crate it goes into. */
export function WalkStops({ view, queue }: StopsProps) {
  const waiting = new Set(
    queue.scans.filter(({ state }) => state === 'waiting').map(({ scan }) => scan.code.toUpperCase()),
  );
  if (view.stops.length === 0)
    return (
      <section className="card" aria-label="Stops">
        <h2>Nothing to pick here</h2>
        <p className="soft">
          {view.crates.length === 0
            ? 'No booking leaves on this day. Look at another day above.'
            : 'Nothing of what leaves on this day lies in this depot. Look at another depot above.'}
        </p>
      </section>
    );
  return (
    <section className="card" aria-label="Stops">
      <h2>
        {view.stops.length} {view.stops.length === 1 ? 'stop' : 'stops'} in walking order
      </h2>
      <ol className="walk-stops">
        {view.stops.map(({ bay, pieces }) => (
          <li key={bay}>
            <h3 className="bay">{bay === '' ? 'No bay' : bay}</h3>
            <ul className="pick-lines">
              {pieces.map((piece) => (
                <StopPiece
                  key={`${piece.booking} ${piece.code}`}
                  piece={piece}
                  isWaiting={waiting.has(scanCode(piece))}
                  queue={queue}
                />
              ))}
            </ul>
          </li>
        ))}
      </ol>
    </section>
  );
}

interface PieceProps extends Pick<StopsProps, 'queue'> {
  readonly piece: WalkPiece;
  readonly isWaiting: boolean;
}

function StopPiece({ piece, isWaiting, queue }: PieceProps) {
  const { booking, code, count, kind, name, picked, why } = piece;
  return (
    <li data-picked={picked}>
      <div className="what">
        <strong className="tag">{kind === 'unit' ? code : `${count} × ${code}`}</strong> {name}
        {why !== null && !picked && <small className="beside">Must go. {why}</small>}
      </div>
      <span className="crate">
        <small>crate of</small> {booking}
      </span>
      <PickMark isPicked={picked} isWaiting={isWaiting} />
      {picked ? (
        <button
          type="button"
          className="quiet no-print"
          onClick={() => queue.add({ kind: 'undo', code: scanCode(piece) }, booking)}
          aria-label={`Undo ${code} of ${booking}`}
        >
          Undo
        </button>
      ) : (
        kind === 'counted' && (
          <CountPieces
            label={`Counted ${code} for ${booking}`}
            count={count}
            onCount={(counted) => queue.add({ kind: 'count', code: scanCode(piece), count: counted }, booking)}
          />
        )
      )}
    </li>
  );
}
