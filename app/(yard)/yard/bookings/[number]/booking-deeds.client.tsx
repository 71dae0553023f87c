'use client';

import { SaidLine } from '#app/(yard)/_blocks/said.tsx';
import { useAct } from '#app/(yard)/_blocks/use-act.client.ts';
import type { BookingView } from '#lib/services/yard/open-booking.ts';
import styles from './booking.module.css';
import { CancelDeed } from './cancel-deed.client.tsx';
import { ExtendDeed } from './extend-deed.client.tsx';
import { LateDeed } from './late-deed.client.tsx';
import { OffHireDeed } from './off-hire-deed.client.tsx';
import { ReleaseDeed } from './release-deed.client.tsx';
import { SwapDeed } from './swap-deed.client.tsx';

/** What may be done with the booking now; each says what it leads to before it is pressed. */
export function BookingDeeds({ view }: { readonly view: BookingView }) {
  const { act, said, busy } = useAct(`/api/v1/yard/bookings/${view.number}`);
  const is = (...states: readonly string[]) => view.units.some(({ state }) => states.includes(state));
  const deed = { view, busy, act };
  return (
    <section className="card" aria-label="What can be done">
      <h2>What can be done</h2>
      <SaidLine said={said} />
      {view.stands === 'held' && (
        <p className="tools">
          <button
            type="button"
            className="main"
            disabled={busy}
            onClick={() =>
              void act({
                body: { deed: 'confirm' },
                done: () => ({ tone: 'good', words: 'Confirmed: it no longer lapses.' }),
              })
            }
          >
            Confirm
          </button>
          <span className="soft">The customer has confirmed; the hold no longer runs out.</span>
        </p>
      )}
      {view.stands === 'back' && (
        <p className="tools">
          <button
            type="button"
            className="main"
            disabled={busy}
            onClick={() =>
              void act({
                body: { deed: 'close' },
                done: () => ({ tone: 'good', words: 'Closed: nothing more is asked for.' }),
              })
            }
          >
            Close
          </button>
          <span className="soft">Once everything is checked in and settled.</span>
        </p>
      )}
      <div className={styles.deeds}>
        {is('held', 'allocated', 'picked', 'out') && <ExtendDeed {...deed} />}
        {is('out', 'back') && <OffHireDeed {...deed} />}
        {is('out') && <LateDeed {...deed} />}
        {is('held', 'allocated', 'picked', 'out') && <SwapDeed {...deed} />}
        {is('held', 'allocated', 'picked') && view.units.length > 1 && <ReleaseDeed {...deed} />}
        {!is('out', 'back') && view.stands !== 'back' && view.stands !== 'out' && <CancelDeed {...deed} />}
      </div>
    </section>
  );
}
