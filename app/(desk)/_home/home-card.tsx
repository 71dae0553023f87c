import Link from 'next/link';
import type { ReactNode } from 'react';

interface Entry {
  readonly enquiryId: number;
  readonly number: string;
  readonly title: string;
  readonly customer: string;
}

interface HomeCardProps<E extends Entry> {
  readonly title: string;
  readonly entries: readonly E[];
  readonly empty: string;
  readonly tell: (entry: E) => ReactNode;
  /** Where in the enquiry the matter is settled. */
  readonly tab?: string;
  readonly asks?: boolean;
}

/** More than these are a list, which is another page. */
const SHOWN = 6;

/** One kind of thing that asks for attention: how many there are, the most urgent ones, and where each is settled. */
export function HomeCard<E extends Entry>({ title, entries, empty, tell, tab = '', asks }: HomeCardProps<E>) {
  return (
    <section className={asks ? 'card asks' : 'card'} aria-label={title}>
      <h2>
        {title} <span className="soft">{entries.length === 0 ? 'none' : entries.length}</span>
      </h2>
      {entries.length === 0 ? (
        <p className="soft">{empty}</p>
      ) : (
        <ul className="findings">
          {entries.slice(0, SHOWN).map((entry, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: an enquiry may stand in a card more than once
            <li key={`${entry.enquiryId} ${index}`}>
              <Link href={`/enquiries/${entry.enquiryId}${tab}`}>
                <span className="tag">{entry.number}</span> {entry.title}
              </Link>
              <small className="beside">
                {entry.customer} · {tell(entry)}
              </small>
            </li>
          ))}
        </ul>
      )}
      {entries.length > SHOWN && <p className="soft">And {entries.length - SHOWN} more: see the enquiries.</p>}
    </section>
  );
}
