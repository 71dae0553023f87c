'use client';

import { useState } from 'react';
import type { StocktakeOutcome } from '#lib/services/stock/close-stocktake.ts';
import type { StocktakeView } from '#lib/services/stock/open-stocktake.ts';
import { SaidLine } from '../../../_blocks/said.tsx';
import { useAct } from '../../../_blocks/use-act.client.ts';

interface CloseStocktakeProps {
  readonly view: StocktakeView;
  readonly path: string;
  readonly busy: boolean;
}

const MISSING_SHOWN = 60;

/** What is missing is left on record, or given up as lost with a reason; then the stocktake is closed. */
export function CloseStocktake({ view: { findings, names }, path, busy }: CloseStocktakeProps) {
  const close = useAct(path);
  const [lost, setLost] = useState<ReadonlySet<string>>(new Set());
  const [reason, setReason] = useState('');
  const { missing, misplaced } = findings;
  const given = missing.filter(({ serial }) => lost.has(serial));
  const toggle = (serial: string) =>
    setLost(new Set(lost.has(serial) ? [...lost].filter((one) => one !== serial) : [...lost, serial]));
  return (
    <section className={missing.length > 0 ? 'card asks' : 'card'} aria-label="Missing">
      <h2>
        Missing <span className="soft">{missing.length === 0 ? 'none' : missing.length}</span>
      </h2>
      {missing.length === 0 ? (
        <p>Everything that should be here was found.</p>
      ) : (
        <ul className="yard-rows">
          {missing.slice(0, MISSING_SHOWN).map(({ serial, bay, model }) => (
            <li key={serial}>
              <span>
                <strong>{serial}</strong> in {bay}
                <small className="beside">{names[model]}</small>
              </span>
              <label className="tick">
                <input type="checkbox" checked={lost.has(serial)} onChange={() => toggle(serial)} /> lost
              </label>
            </li>
          ))}
        </ul>
      )}
      {missing.length > MISSING_SHOWN && (
        <p className="soft">And {missing.length - MISSING_SHOWN} more: scan on first.</p>
      )}
      {given.length > 0 && (
        <p>
          <label htmlFor="lost-why">Why {given.length === 1 ? 'it is' : 'they are'} given up</label>
          <input id="lost-why" value={reason} onChange={(event) => setReason(event.target.value)} />
        </p>
      )}
      <p className="soft">
        Closing moves {misplaced.length} {misplaced.length === 1 ? 'unit' : 'units'} to where{' '}
        {misplaced.length === 1 ? 'it was' : 'they were'} found and leaves {missing.length - given.length} missing on
        record.
      </p>
      <div className="tools">
        <button
          type="button"
          className="main"
          disabled={busy || close.busy || (given.length > 0 && reason.trim() === '')}
          onClick={() =>
            void close.act<StocktakeOutcome>({
              body: { act: 'close', lost: given.map(({ serial }) => ({ serial, reason })) },
              done: () => ({ tone: 'good', words: 'The stocktake is closed.' }),
            })
          }
        >
          Close the stocktake
        </button>
        <button
          type="button"
          disabled={busy || close.busy}
          onClick={() => void close.act<true>({ body: { act: 'give up' }, done: () => null })}
        >
          Give it up, change nothing
        </button>
      </div>
      <SaidLine said={close.said} />
    </section>
  );
}
