'use client';

import { SaidLine } from '#app/(yard)/_blocks/said.tsx';
import { useAct } from '#app/(yard)/_blocks/use-act.client.ts';
import type { BookingView } from '#lib/services/yard/open-booking.ts';
import styles from './booking.module.css';
import { CancelDeed } from './cancel-deed.client.tsx';
import type { DeedProps } from './deed-props.ts';
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
        <PlainDeed
          {...deed}
          name="Confirm"
          body={{ deed: 'confirm' }}
          done="Confirmed: it no longer lapses."
          meaning="The customer has confirmed; the hold no longer runs out."
        />
      )}
      {view.stands === 'back' && (
        <PlainDeed
          {...deed}
          name="Close"
          body={{ deed: 'close' }}
          done="Closed: nothing more is asked for."
          meaning="Once everything is checked in and settled."
        />
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

interface PlainDeedProps extends Pick<DeedProps, 'act' | 'busy'> {
  readonly name: string;
  readonly body: { readonly deed: 'confirm' | 'close' };
  /** Said once it is done. */
  readonly done: string;
  readonly meaning: string;
}

/** A deed that needs nothing but a press. */
function PlainDeed({ act, busy, name, body, done, meaning }: PlainDeedProps) {
  return (
    <p className="tools">
      <button
        type="button"
        className="main"
        disabled={busy}
        onClick={() => void act({ body, done: () => ({ tone: 'good', words: done }) })}
      >
        {name}
      </button>
      <span className="soft">{meaning}</span>
    </p>
  );
}
