'use client';

import { useState } from 'react';
import type { DeedProps } from './deed-props.ts';
import { DeedField } from './unit-ticks.client.tsx';

/** Everything is set free and the quote is open again; it can be accepted anew, so nothing is lost for good. */
export function CancelDeed({ view, busy, act }: DeedProps) {
  const [reason, setReason] = useState('');
  const cancel = () =>
    act<{ freed: readonly string[] }>({
      body: { deed: 'cancel', reason },
      done: ({ freed }) => ({ tone: 'good', words: `Cancelled: ${freed.length} units are free again.` }),
    });
  return (
    <details>
      <summary>Cancel the booking</summary>
      <p className="soft">
        All units are free at once
        {view.quote === null ? '' : ` and quote ${view.quote} is open again: it can be accepted anew`}.
      </p>
      <div className="fields">
        <DeedField id="cancel-why" label="Why" value={reason} onChange={setReason} />
      </div>
      <button type="button" disabled={busy || reason.trim() === ''} onClick={() => void cancel()}>
        Cancel booking {view.number}
      </button>
    </details>
  );
}
