import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { availabilityAddress, readAvailabilityAddress } from '#app/_lib/availability-address.ts';
import type { SearchParams } from '#app/_lib/enquiry-list-address.ts';
import { ShownWindow } from '#app/_ui/shown-forms.client.tsx';
import { openUnitAvailability, type UnitAvailabilityView } from '#lib/services/stock/open-availability.ts';
import { classOf, DayHeads, stateClass } from '../day-cells.tsx';
import { Legend } from '../legend.tsx';
import styles from '../timeline.module.css';
import { WeekSteps } from '../week-steps.tsx';

export const dynamic = 'force-dynamic';

interface ModelPageProps {
  readonly params: Promise<{ readonly model: string }>;
  readonly searchParams: Promise<SearchParams>;
}

export async function generateMetadata({ params }: ModelPageProps): Promise<Metadata> {
  return { title: `Availability of ${decodeURIComponent((await params).model)}` };
}

export default async function ModelAvailabilityPage({ params, searchParams }: ModelPageProps) {
  const { role: _, ...asked } = readAvailabilityAddress(await searchParams);
  const view = openUnitAvailability(await asking(), { ...asked, model: decodeURIComponent((await params).model) });
  if (!view.ok) {
    return (
      <>
        <h1>Availability</h1>
        <p className="notice refusal">{view.reason.sentence}</p>
      </>
    );
  }
  const { model, rows, today } = view.value;
  const shown = view.value.asked;
  const path = `/yard/availability/${model.number}`;
  return (
    <div className={styles.page}>
      <p>
        <Link
          href={availabilityAddress({ asked: { ...shown, role: model.role }, path: '/yard/availability', change: {} })}
        >
          Availability
        </Link>
      </p>
      <h1>
        {model.number} {model.name}
      </h1>
      <WeekSteps
        from={shown.from}
        today={today}
        hrefOf={(from) => availabilityAddress({ asked: shown, path, change: { from } })}
      />
      {rows.length === 0 ? (
        <p className="empty">
          Pieces of this model are counted and have no serial numbers: see them among the counted pieces.
        </p>
      ) : (
        <UnitTable view={view.value} />
      )}
      <Legend hireDays={shown.hireDays} />
      <Bookings view={view.value} />
    </div>
  );
}

function UnitTable({ view: { rows, today, places } }: { readonly view: UnitAvailabilityView }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reached by the keyboard
    <section className={`wide ${styles.scroll}`} aria-label="Units by day" tabIndex={0}>
      <table className={styles.timeline}>
        <thead>
          <DayHeads what="Unit" days={rows[0]?.days ?? []} today={today} />
        </thead>
        <tbody>
          {rows.map(({ serial, days }) => (
            <tr key={serial}>
              <th scope="row">
                <Link href={`/yard/stock/${serial}`}>{serial}</Link>
                <small>{places[serial]}</small>
              </th>
              {days.map(({ on, state, number }) => (
                <td key={on} className={classOf({ on, today })} title={`${on}: ${state} ${number}`}>
                  <span className={styles.cell}>
                    <span className={stateClass(state)} />
                  </span>
                  <span className={styles.said}>
                    {state} {number}
                  </span>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Bookings({ view: { engagements } }: { readonly view: UnitAvailabilityView }) {
  return (
    <section className="panel" aria-label="Bookings" style={{ marginTop: 'var(--space-4)' }}>
      <h2>Bookings in these weeks</h2>
      {engagements.length === 0 ? (
        <p className="soft">None.</p>
      ) : (
        <ul className="findings">
          {engagements.map((row) => (
            <li key={`${row.booking} ${row.serial} ${row.startsOn}`}>
              <strong>{row.booking}</strong> {row.customer ?? 'no customer'}: {row.serial}{' '}
              <span className="mark">{row.state}</span>
              <small className="beside">
                <ShownWindow days={{ starts_on: row.startsOn, ends_before: row.endsBefore }} />
              </small>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
