import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { availabilityAddress, readAvailabilityAddress } from '#app/_lib/availability-address.ts';
import type { SearchParams } from '#app/_lib/enquiry-list-address.ts';
import { PrintButton } from '#app/_ui/print-button.client.tsx';
import { type AvailabilityView, HIRE_LENGTHS, openAvailability } from '#lib/services/stock/open-availability.ts';
import { DayCellOf, DayHeads } from './day-cells.tsx';
import { Legend } from './legend.tsx';
import styles from './timeline.module.css';
import { WeekSteps } from './week-steps.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Availability' };

const PATH = '/yard/availability';

export default async function AvailabilityPage({ searchParams }: { readonly searchParams: Promise<SearchParams> }) {
  const view = openAvailability(await asking(), readAvailabilityAddress(await searchParams));
  if (!view.ok) {
    return (
      <>
        <h1>Availability</h1>
        <p className="notice refusal">{view.reason.sentence}</p>
      </>
    );
  }
  const { asked, rows, today } = view.value;
  return (
    <div className={styles.page}>
      <div className="heading">
        <h1>Availability</h1>
        <PrintButton>Print</PrintButton>
      </div>
      <Filters view={view.value} />
      <WeekSteps
        from={asked.from}
        hrefOf={(from) => availabilityAddress({ asked, path: PATH, change: { from } })}
        today={today}
      />
      {rows.length === 0 ? (
        <p className="empty">No piece of this role stands in this depot: choose another role or all depots.</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reached by the keyboard
        <section className={`wide ${styles.scroll}`} aria-label="Free pieces by model and day" tabIndex={0}>
          <table className={styles.timeline}>
            <caption>
              Pieces of each model that are free for a hire of {asked.hireDays} {asked.hireDays === 1 ? 'day' : 'days'}{' '}
              that starts on the day{asked.depot === '' ? '' : `, at ${asked.depot}`}.
            </caption>
            <thead>
              <DayHeads what="Model" days={rows[0]?.days ?? []} today={today} />
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.model}>
                  <th scope="row">
                    <Link
                      href={availabilityAddress({
                        asked: { ...asked, role: '' },
                        path: `${PATH}/${row.model}`,
                        change: {},
                      })}
                    >
                      {row.model}
                    </Link>
                    <small>{row.name}</small>
                  </th>
                  {row.days.map((day) => (
                    <DayCellOf key={day.on} day={day} total={row.total} today={today} />
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      <Legend hireDays={asked.hireDays} />
    </div>
  );
}

function Filters({ view: { asked, roles, depots } }: { readonly view: AvailabilityView }) {
  return (
    <form className={`tools ${styles.filters}`} action={PATH} method="get">
      <input type="hidden" name="from" value={asked.from} />
      <div>
        <label htmlFor="role">Role</label>
        <select id="role" name="role" defaultValue={asked.role}>
          {roles.map((role) => (
            <option key={role}>{role}</option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor="depot">Depot</label>
        <select id="depot" name="depot" defaultValue={asked.depot}>
          <option value="">all together</option>
          {depots.map(({ code, name }) => (
            <option key={code} value={code}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor="hire">For a hire of</label>
        <select id="hire" name="hire" defaultValue={String(asked.hireDays)}>
          {HIRE_LENGTHS.map((length) => (
            <option key={length} value={length}>
              {length} {length === 1 ? 'day' : 'days'}
            </option>
          ))}
        </select>
      </div>
      <button type="submit" className="main">
        Show
      </button>
    </form>
  );
}
