'use client';

import type { StocktakeView } from '#lib/services/stock/open-stocktake.ts';
import { SaidLine } from '../../../_blocks/said.tsx';
import { useAct } from '../../../_blocks/use-act.client.ts';

interface FoundListProps {
  readonly view: StocktakeView;
  readonly isOpen: boolean;
  readonly path: string;
}

const LAST_SHOWN = 12;

/** The last scans, each of which can be taken back, and what stands wrong. */
export function FoundList({ view: { scanned, findings, stocktake }, isOpen, path }: FoundListProps) {
  const { act, said } = useAct(path);
  const wrong = new Map([...findings.misplaced, ...findings.unexpected].map((unit) => [unit.serial, unit]));
  if (stocktake.state !== 'open') return null;
  const told = [
    ...scanned.filter(({ serial }) => wrong.has(serial)),
    ...scanned.filter(({ serial }) => !wrong.has(serial)),
  ];
  return (
    <section className="card" aria-label="Found">
      <h2>
        Found <span className="soft">{scanned.length}</span>
      </h2>
      <SaidLine said={said} />
      {scanned.length === 0 ? (
        <p className="soft">Nothing was scanned yet.</p>
      ) : (
        <ul className="yard-rows">
          {told.slice(0, wrong.size + LAST_SHOWN).map(({ serial, bay }) => {
            const unit = wrong.get(serial);
            return (
              <li key={serial}>
                <span>
                  <strong>{serial}</strong> in {bay}{' '}
                  {unit !== undefined && (
                    <span className="mark warning">
                      {unit.state === 'ready' || unit.state === 'back' ? `from ${unit.depot} ${unit.bay}` : unit.state}
                    </span>
                  )}
                </span>
                {isOpen && (
                  <button
                    type="button"
                    onClick={() =>
                      void act<true>({
                        body: { act: 'unscan', serial },
                        done: () => ({ tone: 'good', words: `The scan of ${serial} is taken back.` }),
                      })
                    }
                  >
                    Take back
                  </button>
                )}
              </li>
            );
          })}
        </ul>
      )}
    </section>
  );
}
