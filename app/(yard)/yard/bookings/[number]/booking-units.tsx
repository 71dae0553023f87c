import Link from 'next/link';
import { Fragment, type ReactNode } from 'react';
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
              <Facts unit={unit} view={view} />
            </small>
          </div>
          <span className={unit.isLate ? 'mark warning' : 'mark'}>{unit.isLate ? 'late' : unit.state}</span>
        </li>
      ))}
    </ul>
  );
}

interface FactsProps {
  readonly unit: BookedUnitView;
  readonly view: BookingView;
}

/** What is not so for the whole booking: other days, when it left and came back, what it stands in for. */
function Facts({ unit, view }: FactsProps) {
  const ownDays = unit.startsOn !== view.startsOn || unit.endsBefore !== view.endsBefore;
  const facts: readonly (readonly [string, ReactNode])[] = [
    ...(ownDays
      ? [
          [
            'days',
            <ShownWindow key="days" days={{ starts_on: unit.startsOn, ends_before: unit.endsBefore }} />,
          ] as const,
        ]
      : []),
    ...dated('left', unit.outOn),
    ...dated('back', unit.backOn),
    ...dated('expected', unit.backOn === null ? unit.expectedBackOn : null),
    ...(unit.inPlaceOf === null ? [] : [['in place of', `in place of ${unit.inPlaceOf}`] as const]),
    ...(unit.quotedModel === '' ? [] : [['stands in', `stands in for ${unit.quotedModel}`] as const]),
    ...(unit.notice === null ? [] : [['notice', `off hire by ${unit.notice}`] as const]),
  ];
  return facts.map(([name, words], at) => (
    <Fragment key={name}>
      {at === 0 ? '' : ' · '}
      {words}
    </Fragment>
  ));
}

function dated(word: string, on: string | null): readonly (readonly [string, ReactNode])[] {
  if (on === null) return [];
  return [
    [
      word,
      <Fragment key={word}>
        {word} <ShownDate on={on} />
      </Fragment>,
    ],
  ];
}
