import type { BookingView } from '#lib/services/yard/open-booking.ts';
import styles from './booking.module.css';

const WAY = ['held', 'confirmed', 'allocated', 'picked', 'out', 'back', 'closed'] as const;

/** How far it has come: a step done, the one it stands at, and those ahead; what ended otherwise says so alone. */
export function StateStrip({ view }: { readonly view: BookingView }) {
  const at = WAY.findIndex((state) => state === view.stands);
  if (at < 0) return <p className="notice warning">This booking is {view.stands}.</p>;
  return (
    <ol className={styles.strip} aria-label="How far it has come">
      {WAY.map((state, index) => (
        <li
          key={state}
          className={index < at ? styles.done : index === at ? styles.now : styles.ahead}
          aria-current={index === at ? 'step' : undefined}
        >
          {index < at ? '✓ ' : ''}
          {state}
        </li>
      ))}
    </ol>
  );
}
