'use client';

import { useState } from 'react';
import type { LateReported } from '#lib/services/yard/report-late.ts';
import type { DeedProps } from './deed-props.ts';
import { DeedField, UnitTicks } from './unit-ticks.client.tsx';

/** Units that come back later than agreed: whom it hits is said, and who can is given another unit. */
export function LateDeed({ view, busy, act }: DeedProps) {
  const serials = view.units.flatMap(({ serial, state }) => (state === 'out' ? [serial] : []));
  const [expectedBackOn, setExpected] = useState(view.endsBefore ?? view.today);
  const [saidBy, setSaidBy] = useState('');
  const [chosen, setChosen] = useState<readonly string[]>(serials);
  const report = () =>
    act<LateReported>({
      body: { deed: 'late', expectedBackOn, saidBy, serials: chosen },
      done: ({ hits }) =>
        hits.length === 0
          ? { tone: 'good', words: 'Written down. Nobody else counts on these units before that.' }
          : {
              tone: hits.some(({ instead }) => instead === null) ? 'warning' : 'good',
              words: `Written down. ${hits
                .map(({ booking, customer, serial, instead }) =>
                  instead === null
                    ? `${booking}${customer === '' ? '' : ` (${customer})`} counts on ${serial} and no other is free: call them.`
                    : `${booking} gets ${instead} instead of ${serial}.`,
                )
                .join(' ')}`,
            },
    });
  return (
    <details>
      <summary>Comes back late</summary>
      <p className="soft">The charge runs on until it is back or notice is given.</p>
      <div className="fields">
        <DeedField id="late-on" label="Expected back on" type="date" value={expectedBackOn} onChange={setExpected} />
        <DeedField id="late-by" label="Said by" value={saidBy} onChange={setSaidBy} />
      </div>
      <UnitTicks legend="Units that are late" serials={serials} chosen={chosen} onChange={setChosen} />
      <button type="button" className="main" disabled={busy || chosen.length === 0} onClick={() => void report()}>
        Write it down
      </button>
    </details>
  );
}
