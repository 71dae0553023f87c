import Link from 'next/link';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import { addDays } from '#lib/kernel/date-range.ts';
import { SHOWN_DAYS } from '#lib/services/stock/open-availability.ts';

interface WeekStepsProps {
  readonly from: string;
  readonly today: string;
  readonly hrefOf: (from: string) => string;
}

/** A week back, a week on, or to today. */
export function WeekSteps({ from, today, hrefOf }: WeekStepsProps) {
  return (
    <nav className="tools" aria-label="Weeks" style={{ alignItems: 'center' }}>
      <Link className="button" href={hrefOf(addDays(from, -7))}>
        ← A week earlier
      </Link>
      <Link className="button" href={hrefOf(addDays(from, 7))}>
        A week later →
      </Link>
      {(today < from || today >= addDays(from, SHOWN_DAYS)) && (
        <Link className="button" href={hrefOf('')}>
          To today
        </Link>
      )}
      <span className="soft">
        <ShownDate on={from} /> to <ShownDate on={addDays(from, SHOWN_DAYS - 1)} />
      </span>
    </nav>
  );
}
