'use client';

import { useId, useState } from 'react';
import { SaidLine } from '../../_blocks/said.tsx';
import { useAct } from '../../_blocks/use-act.client.ts';

interface CountFormProps {
  readonly model: string;
  readonly depot: string;
  readonly count: number;
}

/** Another number for a shelf, with the reason. */
export function CountForm({ model, depot, count }: CountFormProps) {
  const id = useId();
  const [pieces, setPieces] = useState(String(count));
  const [reason, setReason] = useState('');
  const { act, said, busy } = useAct('/api/v1/stock/counted');
  return (
    <details>
      <summary>Change</summary>
      <form
        className="tools"
        onSubmit={(event) => {
          event.preventDefault();
          void act<{ count: number }>({
            body: { model, depot, count: Number(pieces), reason },
            done: (value) => ({ tone: 'good', words: `${value.count} at ${depot} now.` }),
          }).then((done) => done !== null && setReason(''));
        }}
      >
        <div>
          <label htmlFor={`${id}-count`}>Pieces</label>
          <input
            id={`${id}-count`}
            type="number"
            inputMode="numeric"
            min={0}
            style={{ width: '6em' }}
            value={pieces}
            onChange={(event) => setPieces(event.target.value)}
          />
        </div>
        <div>
          <label htmlFor={`${id}-reason`}>Why</label>
          <input id={`${id}-reason`} value={reason} onChange={(event) => setReason(event.target.value)} />
        </div>
        <button type="submit" disabled={busy || pieces === ''} aria-busy={busy}>
          Save
        </button>
      </form>
      <SaidLine said={said} />
    </details>
  );
}
