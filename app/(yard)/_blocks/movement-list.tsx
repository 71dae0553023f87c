import Link from 'next/link';
import type { ReactNode } from 'react';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import type { YardMovement } from '#lib/services/yard/open-yard.ts';

interface MovementListProps {
  readonly title: string;
  readonly rows: readonly YardMovement[];
  readonly empty: string;
  /** What the day of a row means: "leaves", "was to come back". */
  readonly day: (row: YardMovement) => { readonly label: string; readonly on: string };
  /** What can be done with a row. */
  readonly act?: (row: YardMovement) => ReactNode;
}

/** Bookings that move: number, customer, pieces, the day, and where the work on each is done. */
export function MovementList({ title, rows, empty, day, act }: MovementListProps) {
  const late = rows.some((row) => row.late);
  return (
    <section className={late ? 'card asks' : 'card'} aria-label={title}>
      <h2>
        {title} <span className="soft">{rows.length === 0 ? 'none' : rows.length}</span>
      </h2>
      {rows.length === 0 ? (
        <p className="soft">{empty}</p>
      ) : (
        <ul className="movements">
          {rows.map((row) => {
            const { label, on } = day(row);
            return (
              <li key={row.booking}>
                <div className="what">
                  <Link className="tag" href={`/yard/bookings/${row.booking}`}>
                    {row.booking}
                  </Link>{' '}
                  {row.customer ?? 'No customer'}
                  <small className="beside">
                    {row.title === null ? '' : `${row.title} · `}
                    {row.units} {row.units === 1 ? 'unit' : 'units'} · {row.state}
                  </small>
                </div>
                <span className={row.late ? 'mark warning' : 'mark'}>
                  {label} <ShownDate on={on} />
                </span>
                {act?.(row)}
              </li>
            );
          })}
        </ul>
      )}
    </section>
  );
}
