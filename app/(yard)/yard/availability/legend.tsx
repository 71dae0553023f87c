import { stateClass } from './day-cells.tsx';
import styles from './timeline.module.css';

const WORDS = [
  ['booked', 'booked'],
  ['late', 'out, and late'],
  ['turnaround', 'being turned round'],
  ['transfer', 'between depots'],
  ['due', 'inspection or calibration due'],
  ['held back', 'quarantine, workshop or lost'],
] as const;

/** What the bars mean; each has a pattern of its own besides its colour. */
export function Legend({ hireDays }: { readonly hireDays: number }) {
  return (
    <ul className={styles.legend} aria-label="What the bars mean">
      {WORDS.map(([state, words]) => (
        <li key={state}>
          <span className={`${styles.swatch} ${stateClass(state)}`} aria-hidden="true" /> {words}
        </li>
      ))}
      <li>
        <span className={`${styles.swatch} ${stateClass('short gap')}`} aria-hidden="true" /> here, but not for{' '}
        {hireDays === 1 ? 'a day and its turnaround' : `${hireDays} days and the turnaround`}
      </li>
    </ul>
  );
}
