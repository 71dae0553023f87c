import { DAY_STATES, type DayCount, type DayState } from '#lib/stock/timeline.ts';
import styles from './timeline.module.css';

interface DayHeadsProps {
  /** What stands in the first column. */
  readonly what: string;
  readonly days: readonly { readonly on: string }[];
  readonly today: string;
}

const WEEKDAYS = ['Su', 'Mo', 'Tu', 'We', 'Th', 'Fr', 'Sa'];
const WEEKDAY_NAMES = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** One head a day: weekday and date, the month where one begins. */
export function DayHeads({ what, days, today }: DayHeadsProps) {
  return (
    <tr>
      <th scope="col">{what}</th>
      {days.map(({ on }, index) => {
        const weekday = weekdayOf(on);
        const isFirst = index === 0 || on.endsWith('-01');
        return (
          <th
            key={on}
            scope="col"
            className={classOf({ on, today })}
            aria-label={`${WEEKDAY_NAMES[weekday]} ${on}${on === today ? ', today' : ''}`}
          >
            <small>{on === today ? 'now' : isFirst ? MONTHS[Number(on.slice(5, 7)) - 1] : WEEKDAYS[weekday]}</small>
            {Number(on.slice(8))}
          </th>
        );
      })}
    </tr>
  );
}

/** Saturdays and Sundays are shaded, today has its edge. */
export function classOf({ on, today }: { readonly on: string; readonly today: string }): string {
  const weekday = weekdayOf(on);
  return [
    on === today ? styles.today : '',
    weekday === 0 || weekday === 6 ? styles.weekend : '',
    on < today ? styles.past : '',
  ]
    .filter(Boolean)
    .join(' ');
}

function weekdayOf(on: string): number {
  return new Date(`${on}T00:00:00Z`).getUTCDay();
}

interface DayCellProps {
  readonly day: DayCount;
  readonly total: number;
  readonly today: string;
}

/** How many are free, and a bar that says what holds the others. */
export function DayCellOf({ day: { on, counts }, total, today }: DayCellProps) {
  const others = DAY_STATES.filter((state) => state !== 'free' && counts[state] > 0);
  const told = others.map((state) => `${counts[state]} ${state}`).join(', ');
  const tone = counts.free === 0 ? styles.none : counts.free === total ? styles.all : '';
  return (
    <td
      className={`${classOf({ on, today })} ${tone}`}
      title={`${on}: ${counts.free} of ${total} free${told === '' ? '' : `; ${told}`}`}
    >
      {counts.free}
      {told !== '' && (
        <span className={styles.said}>
          {' '}
          of {total}; {told}
        </span>
      )}
      <span className={styles.bar} aria-hidden="true">
        {others.map((state) => (
          <span key={state} className={stateClass(state)} style={{ flexGrow: counts[state] }} />
        ))}
        {counts.free > 0 && <span style={{ flexGrow: counts.free }} />}
      </span>
    </td>
  );
}

const STATE_CLASS: Readonly<Record<DayState, string>> = {
  'held back': 'held',
  late: 'late',
  booked: 'booked',
  turnaround: 'turnaround',
  transfer: 'transfer',
  due: 'due',
  'short gap': 'gap',
  free: 'free',
};

export function stateClass(state: DayState): string {
  return styles[STATE_CLASS[state]] ?? '';
}
