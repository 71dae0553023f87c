import Link from 'next/link';
import { BOOKING_FILTERS, type BookingFilter } from '#lib/services/yard/list-bookings.ts';

interface BookingFiltersProps {
  readonly asked: {
    readonly filter: BookingFilter;
    readonly words: string;
    readonly from: string;
    readonly until: string;
  };
}

const WORDS: Readonly<Partial<Record<BookingFilter, string>>> = {
  running: 'all that run',
  late: 'late',
  all: 'all there ever were',
};

/** Filters of the list; they stand in the address, so that a list can be kept and sent. */
export function BookingFilters({ asked }: BookingFiltersProps) {
  const isNarrowed = asked.filter !== 'running' || asked.words !== '' || asked.from !== '' || asked.until !== '';
  return (
    <form className="panel" action="/yard/bookings" method="get" role="search" aria-label="Bookings">
      <div className="fields">
        <div>
          <label htmlFor="q">Number, customer, order or unit</label>
          <input id="q" name="q" type="search" defaultValue={asked.words} autoComplete="off" />
        </div>
        <div>
          <label htmlFor="state">State</label>
          <select id="state" name="state" defaultValue={asked.filter}>
            {BOOKING_FILTERS.map((filter) => (
              <option key={filter} value={filter}>
                {WORDS[filter] ?? filter}
              </option>
            ))}
          </select>
        </div>
        <div>
          <label htmlFor="from">Runs on or after</label>
          <input id="from" name="from" type="date" defaultValue={asked.from} />
        </div>
        <div>
          <label htmlFor="until">Begins on or before</label>
          <input id="until" name="until" type="date" defaultValue={asked.until} />
        </div>
        <div className="tools" style={{ alignSelf: 'end', marginBottom: 0 }}>
          <button type="submit" className="main">
            Show
          </button>
          {isNarrowed && (
            <Link className="button quiet" href="/yard/bookings">
              Start over
            </Link>
          )}
        </div>
      </div>
    </form>
  );
}
