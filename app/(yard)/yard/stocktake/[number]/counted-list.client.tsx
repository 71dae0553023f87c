'use client';

import { useState } from 'react';
import type { CountedExpected, StocktakeView } from '#lib/services/stock/open-stocktake.ts';
import { SaidLine } from '../../../_blocks/said.tsx';
import { useAct } from '../../../_blocks/use-act.client.ts';

interface CountedListProps {
  readonly view: StocktakeView;
  readonly isOpen: boolean;
  readonly path: string;
}

/** Pieces without serial numbers: the number that was counted beside the number on record. */
export function CountedList({ view: { counted, stocktake }, isOpen, path }: CountedListProps) {
  if (counted.length === 0 || stocktake.state !== 'open') return null;
  return (
    <section className="card" aria-label="Counted pieces">
      <h2>Counted pieces</h2>
      <ul className="yard-rows">
        {counted.map((row) => (
          <li key={row.model}>
            <span>
              <strong>{row.model}</strong> {row.name} {row.bay}
              <small className="beside">
                on record {row.expected}
                {row.counted === null ? ', not counted yet' : `, counted ${row.counted}`}
              </small>
            </span>
            {isOpen && <CountField row={row} path={path} />}
          </li>
        ))}
      </ul>
    </section>
  );
}

function CountField({ row, path }: { readonly row: CountedExpected; readonly path: string }) {
  const { act, said, busy } = useAct(path);
  const [count, setCount] = useState('');
  return (
    <form
      className="tools"
      style={{ marginBottom: 0 }}
      onSubmit={(event) => {
        event.preventDefault();
        void act<true>({ body: { act: 'count', model: row.model, count: Number(count) }, done: () => null }).then(
          (done) => done !== null && setCount(''),
        );
      }}
    >
      <input
        id={`count-${row.model}`}
        aria-label={`Pieces of ${row.name}`}
        type="number"
        inputMode="numeric"
        min={0}
        style={{ width: '6em' }}
        value={count}
        onChange={(event) => setCount(event.target.value)}
      />
      <button type="submit" disabled={busy || count === ''} aria-busy={busy}>
        Count
      </button>
      {said !== null && <SaidLine said={said} />}
    </form>
  );
}
