import Link from 'next/link';
import { ShownMoment, ShownWindow } from '#app/_ui/shown-forms.client.tsx';
import type { BookingRowView } from '#lib/services/yard/list-bookings.ts';

interface BookingRowsProps {
  readonly rows: readonly BookingRowView[];
}

/** One booking a row: number, whose, which days, how it stands. */
export function BookingRows({ rows }: BookingRowsProps) {
  if (rows.length === 0)
    return <p className="soft">No booking is like that. Widen the days, or choose another state.</p>;
  return (
    <ul className="yard-rows">
      {rows.map((row) => (
        <li key={row.number}>
          <Link className="tag" href={`/yard/bookings/${row.number}`}>
            {row.number}
          </Link>
          <div className="what">
            {row.customer ?? row.title ?? 'Own use'}
            <small className="beside">
              {row.startsOn !== null && row.endsBefore !== null && (
                <ShownWindow days={{ starts_on: row.startsOn, ends_before: row.endsBefore }} />
              )}
              {` · ${row.units} ${row.units === 1 ? 'unit' : 'units'}`}
              {row.out > 0 && row.out < row.units ? `, ${row.out} of them out` : ''}
            </small>
          </div>
          {row.state === 'held' && row.heldUntil !== null && !row.hasRunOut && (
            <span className="soft">
              until <ShownMoment at={row.heldUntil} />
            </span>
          )}
          <span className={row.isLate || row.hasRunOut ? 'mark warning' : 'mark'}>
            {row.isLate ? 'late' : row.hasRunOut ? 'run out' : row.state}
          </span>
        </li>
      ))}
    </ul>
  );
}
