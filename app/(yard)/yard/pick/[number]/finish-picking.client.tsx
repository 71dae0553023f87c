'use client';

import type { PickingView } from '#lib/services/yard/picking/open-picking.ts';
import { SaidLine } from '../../../_blocks/said.tsx';
import { useYardDeed, type YardSound } from '../../../_blocks/use-yard-deed.client.ts';

interface FinishPickingProps {
  readonly view: PickingView;
  readonly sound: YardSound;
}

/** What still keeps the booking from being picked, and the press that says it is. */
export function FinishPicking({ view, sound }: FinishPickingProps) {
  const { deed, said, busy } = useYardDeed(sound);
  const { number, open, state } = view;
  if (state === 'picked') {
    return (
      <section className="card" aria-label="Picked">
        <h2>
          <span className="mark good">✓ picked</span> Everything is picked, tried and tested.
        </h2>
        {said !== null && <SaidLine said={said} />}
      </section>
    );
  }
  return (
    <section className={open.length > 0 ? 'card asks' : 'card'} aria-label="Before it is picked">
      <h2>{open.length > 0 ? 'Still open' : 'Nothing is open'}</h2>
      {open.length > 0 && (
        <ul className="still-open">
          {open.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      )}
      {said !== null && <SaidLine said={said} />}
      <button
        type="button"
        className="main wide-press"
        disabled={busy}
        onClick={() => deed({ path: `/api/v1/yard/bookings/${number}/picked`, done: () => `${number} is picked.` })}
      >
        All picked
      </button>
    </section>
  );
}
