import Link from 'next/link';
import { ShownDate, ShownWindow } from '#app/_ui/shown-forms.client.tsx';
import type { BookedUnitView, BookingView } from '#lib/services/yard/open-booking.ts';

/** Every unit of the booking with how far it is; those that left the booking stand below, so that nothing is hidden. */
export function BookingUnits({ view }: { readonly view: BookingView }) {
  const its = view.units.filter(({ state }) => state !== 'swapped' && state !== 'released');
  const left = view.units.filter(({ state }) => state === 'swapped' || state === 'released');
  return (
    <section className="card" aria-label="Units">
      <h2>
        Units <span className="soft">{its.length}</span>
      </h2>
      {its.length === 0 ? (
        <p className="soft">It holds no units with serial numbers.</p>
      ) : (
        <Rows units={its} view={view} />
      )}
      {view.items.length > 0 && (
        <ul className="yard-rows">
          {view.items.map((item) => (
            <li key={item.model}>
              <span>
                <strong>
                  {item.count} × {item.model}
                </strong>{' '}
                {item.name}
              </span>
              <span className="mark">{item.stands}</span>
            </li>
          ))}
        </ul>
      )}
      {left.length > 0 && (
        <details>
          <summary>Swapped or given up: {left.length}</summary>
          <Rows units={left} view={view} />
        </details>
      )}
    </section>
  );
}

interface RowsProps {
  readonly units: readonly BookedUnitView[];
  readonly view: BookingView;
}

function Rows({ units, view }: RowsProps) {
  return (
    <ul className="yard-rows">
      {units.map((unit) => (
        <li key={`${unit.serial} ${unit.startsOn} ${unit.state}`}>
          <Link className="tag" href={`/yard/stock/${encodeURIComponent(unit.serial)}`}>
            {unit.serial}
          </Link>
          <div className="what">
            {unit.name}
            <small className="beside">
              {(unit.startsOn !== view.startsOn || unit.endsBefore !== view.endsBefore) && (
                <ShownWindow days={{ starts_on: unit.startsOn, ends_before: unit.endsBefore }} />
              )}
              {unit.outOn !== null && (
                <>
                  {' '}
                  · left <ShownDate on={unit.outOn} />
                </>
              )}
              {unit.backOn !== null && (
                <>
                  {' '}
                  · back <ShownDate on={unit.backOn} />
                </>
              )}
              {unit.expectedBackOn !== null && unit.backOn === null && (
                <>
                  {' '}
                  · expected <ShownDate on={unit.expectedBackOn} />
                </>
              )}
              {unit.inPlaceOf === null ? '' : ` · in place of ${unit.inPlaceOf}`}
              {unit.quotedModel === '' ? '' : ` · stands in for ${unit.quotedModel}`}
              {unit.notice === null ? '' : ` · off hire by ${unit.notice}`}
            </small>
          </div>
          <span className={unit.isLate ? 'mark warning' : 'mark'}>{unit.isLate ? 'late' : unit.state}</span>
        </li>
      ))}
    </ul>
  );
}
