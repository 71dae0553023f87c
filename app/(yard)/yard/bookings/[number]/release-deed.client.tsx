'use client';

import { useState } from 'react';
import type { DeedProps } from './deed-props.ts';
import { DeedField, UnitTicks } from './unit-ticks.client.tsx';

/** Part of the booking is given up before it leaves; those units are free at once. */
export function ReleaseDeed({ view, busy, act }: DeedProps) {
  const serials = view.units.flatMap(({ serial, state }) =>
    ['held', 'allocated', 'picked'].includes(state) ? [serial] : [],
  );
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [why, setWhy] = useState('');
  const release = () =>
    act<{ freed: readonly string[] }>({
      body: { deed: 'release', serials: chosen, why },
      done: ({ freed }) => {
        setChosen([]);
        return { tone: 'good', words: `Free again: ${freed.join(', ')}.` };
      },
    });
  return (
    <details>
      <summary>Give up part of it</summary>
      <UnitTicks legend="Units that are not needed" serials={serials} chosen={chosen} onChange={setChosen} />
      <div className="fields">
        <DeedField id="release-why" label="Why" value={why} onChange={setWhy} />
      </div>
      <button type="button" disabled={busy || chosen.length === 0} onClick={() => void release()}>
        Give up {chosen.length === 0 ? '' : chosen.length}
      </button>
    </details>
  );
}
