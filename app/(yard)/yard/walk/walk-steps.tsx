import Link from 'next/link';
import { addDays } from '#lib/kernel/date-range.ts';
import type { WalkView } from '#lib/services/yard/picking/open-walk.ts';

/** A day back, a day on, to today, and from depot to depot. */
export function WalkSteps({ view: { day, today, depot, depots } }: { readonly view: WalkView }) {
  const hrefOf = (to: { readonly day?: string; readonly depot?: string }) =>
    `/yard/walk?${new URLSearchParams({ day, depot, ...to })}`;
  return (
    <nav className="tools walk-steps" aria-label="Days and depots">
      <Link className="button" href={hrefOf({ day: addDays(day, -1) })}>
        ← Day before
      </Link>
      {day !== today && (
        <Link className="button" href={hrefOf({ day: today })}>
          Today
        </Link>
      )}
      <Link className="button" href={hrefOf({ day: addDays(day, 1) })}>
        Day after →
      </Link>
      {depots.map(({ code, name, toPick }) => (
        <Link
          key={code}
          className="button"
          href={hrefOf({ depot: code })}
          aria-current={code === depot ? 'page' : undefined}
        >
          {name} <span className="soft">&nbsp;{toPick}</span>
        </Link>
      ))}
    </nav>
  );
}
