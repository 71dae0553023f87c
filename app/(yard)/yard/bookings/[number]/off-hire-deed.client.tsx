'use client';

import { useState } from 'react';
import type { OffHireGiven } from '#lib/services/yard/off-hire.ts';
import type { DeedProps } from './deed-props.ts';
import { DeedField, UnitTicks } from './unit-ticks.client.tsx';

/** The customer's word that the hire ends; it gets a number that the customer is told. */
export function OffHireDeed({ view, busy, act }: DeedProps) {
  const serials = view.units.flatMap(({ serial, state, notice }) =>
    (state === 'out' || state === 'back') && notice === null ? [serial] : [],
  );
  const [at, setAt] = useState('');
  const [saidBy, setSaidBy] = useState('');
  const [note, setNote] = useState('');
  const [chosen, setChosen] = useState<readonly string[]>(serials);
  if (serials.length === 0) return null;
  const give = () =>
    act<OffHireGiven>({
      body: {
        deed: 'off hire',
        noticedAt: at === '' ? new Date().toISOString() : new Date(at).toISOString(),
        saidBy,
        note,
        serials: chosen.filter((serial) => serials.includes(serial)),
      },
      done: ({ notice, serials: named }) => ({
        tone: 'good',
        words: `Off-hire notice ${notice} for ${named.length} ${named.length === 1 ? 'unit' : 'units'}: tell the customer its number.`,
      }),
    });
  return (
    <details>
      <summary>Off-hire notice</summary>
      <p className="soft">
        The charge ends with the {view.hire?.chargeEnds ?? 'off-hire notice'}, by the terms of the quote.
      </p>
      <div className="fields">
        <DeedField id="off-at" label="Given at (empty is now)" type="datetime-local" value={at} onChange={setAt} />
        <DeedField id="off-by" label="Said by" value={saidBy} onChange={setSaidBy} />
        <DeedField id="off-note" label="Note" value={note} onChange={setNote} />
      </div>
      <UnitTicks legend="Units that go off hire" serials={serials} chosen={chosen} onChange={setChosen} />
      <button type="button" className="main" disabled={busy || chosen.length === 0} onClick={() => void give()}>
        Take the notice down
      </button>
    </details>
  );
}
