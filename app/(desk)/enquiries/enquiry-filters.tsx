import Link from 'next/link';
import { enquiryAddress } from '#app/_lib/enquiry-list-address.ts';
import { ENQUIRY_STATES } from '#lib/enquiry/moves.ts';
import type { ActingPerson } from '#lib/services/access/acting-person.ts';
import { DRAFTS, type EnquiriesAsked, type EnquiriesFound } from '#lib/services/enquiries/find-enquiries.ts';
import styles from './enquiry-list.module.css';

interface FiltersProps {
  readonly asked: EnquiriesAsked;
  readonly found: EnquiriesFound;
  readonly people: readonly ActingPerson[];
  /** Name of the customer that the list is narrowed to; empty where it is not. */
  readonly customer: string;
}

/** What narrows the list; all of it stands in the address, so that a link and the way back keep it. */
export function EnquiryFilters({ asked, found, people, customer }: FiltersProps) {
  return (
    <>
      <nav className={styles.states} aria-label="State">
        {['open', ...ENQUIRY_STATES, 'all', DRAFTS].map((state) => (
          <Link
            key={state}
            href={enquiryAddress({ asked, change: { state } })}
            aria-current={asked.state === state ? 'true' : undefined}
          >
            {state} <span className={styles.count}>{found.counts[state] ?? 0}</span>
          </Link>
        ))}
      </nav>
      <form className="tools" action="/enquiries">
        {asked.state !== 'open' && <input type="hidden" name="state" value={asked.state} />}
        {asked.customerId !== null && <input type="hidden" name="customer" value={asked.customerId} />}
        {asked.siteId !== null && <input type="hidden" name="site" value={asked.siteId} />}
        {asked.order !== 'changed' && <input type="hidden" name="order" value={asked.order} />}
        <div>
          <label htmlFor="list-words">Words</label>
          <input
            id="list-words"
            name="q"
            type="search"
            defaultValue={asked.words}
            placeholder="number, title, customer, reference"
            size={34}
          />
        </div>
        <div>
          <label htmlFor="list-assigned">Whose work</label>
          <select id="list-assigned" name="assigned" defaultValue={asked.assigned}>
            <option value="">anybody’s</option>
            <option value="me">mine</option>
            <option value="nobody">nobody’s yet</option>
            {people.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </div>
        <div>
          <label htmlFor="list-due">Due</label>
          <select id="list-due" name="due" defaultValue={asked.due}>
            <option value="">any day</option>
            <option value="late">late</option>
            <option value="week">within seven days, or late</option>
            <option value="none">no day set</option>
          </select>
        </div>
        <button type="submit">Show</button>
        {(asked.words !== '' || asked.assigned !== '' || asked.due !== '') && (
          <Link className="button" href={enquiryAddress({ asked, change: { words: '', assigned: '', due: '' } })}>
            Show all again
          </Link>
        )}
      </form>
      {customer !== '' && (
        <p className="soft">
          Only of {customer}.{' '}
          <Link href={enquiryAddress({ asked, change: { customerId: null, siteId: null } })}>Of every customer</Link>
        </p>
      )}
    </>
  );
}
