'use client';

import { useId, useState } from 'react';
import type { PackingView } from '#lib/services/yard/packing/open-packing.ts';
import { SaidLine } from '../../../_blocks/said.tsx';
import { useYardDeed, type YardSound } from '../../../_blocks/use-yard-deed.client.ts';

interface ChangeLoadProps {
  readonly view: PackingView;
  readonly sound: YardSound;
}

/** Another case, or packing anew with what is proposed. */
export function ChangeLoad({ view, sound }: ChangeLoadProps) {
  const { deed, said, busy } = useYardDeed(sound);
  const id = useId();
  const [name, setName] = useState(view.kinds[0] ?? '');
  const [isAsking, setAsking] = useState(false);
  const path = `/api/v1/yard/bookings/${view.number}/cases`;
  return (
    <section className="card" aria-label="Change the cases">
      <h2>Change the cases</h2>
      <div className="tools">
        <div className="labelled">
          <label htmlFor={id}>Another case</label>
          <select id={id} value={name} onChange={(event) => setName(event.target.value)}>
            {view.kinds.map((kind) => (
              <option key={kind}>{kind}</option>
            ))}
          </select>
        </div>
        <button
          type="button"
          disabled={busy}
          onClick={() =>
            deed<{ readonly case: number }>({
              path,
              body: { name, crew: view.cases[0]?.crew ?? 1 },
              done: (added) => `Case ${added.case} added.`,
            })
          }
        >
          Add it
        </button>
        {view.isStored && !isAsking && (
          <button type="button" className="quiet" onClick={() => setAsking(true)}>
            Pack anew
          </button>
        )}
        {isAsking && (
          <>
            <span>Take everything out of its case?</span>
            <button
              type="button"
              className="danger"
              disabled={busy}
              onClick={() => {
                setAsking(false);
                void deed({ path, method: 'DELETE', done: () => 'Packing begins anew.' });
              }}
            >
              Take out
            </button>
            <button type="button" onClick={() => setAsking(false)}>
              Keep
            </button>
          </>
        )}
      </div>
      {said !== null && <SaidLine said={said} />}
    </section>
  );
}
