import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import type { SearchParams } from '#app/_lib/enquiry-list-address.ts';
import { type SearchEntry, type SearchGroup, searchHouse } from '#lib/services/enquiries/search-house.ts';
import { Marked } from './marked.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Search' };

const TITLES: Readonly<Record<SearchGroup['kind'], string>> = {
  enquiry: 'Enquiries',
  customer: 'Customers',
  site: 'Sites',
  contact: 'Contacts',
  quote: 'Quotes',
  line: 'Valves',
  attachment: 'Files',
  list: 'Valve lists',
  note: 'Notes',
  model: 'Equipment',
  unit: 'Serial numbers',
};

export default async function SearchPage({ searchParams }: { readonly searchParams: Promise<SearchParams> }) {
  const { q } = await searchParams;
  const answer = searchHouse(await asking(), typeof q === 'string' ? q.slice(0, 200) : '');
  if (!answer.ok) return <p className="notice refusal">{answer.reason.sentence}</p>;
  const { words, groups } = answer.value;
  return (
    <>
      <h1>{words === '' ? 'Search' : `“${words}”`}</h1>
      <form className="tools" action="/search">
        <div>
          <label htmlFor="all-words">Words, or the beginnings of words</label>
          <input id="all-words" name="q" type="search" defaultValue={words} size={36} />
        </div>
        <button className="main" type="submit">
          Search
        </button>
      </form>
      {groups.length === 0 && <Nothing words={words} />}
      <div className="columns">
        {groups.map((group) => (
          <Group key={group.kind} group={group} words={words} />
        ))}
      </div>
    </>
  );
}

function Nothing({ words }: { readonly words: string }) {
  return (
    <div className="empty">
      <h2>{words === '' ? 'Everything the house knows' : 'Nothing has these words'}</h2>
      <p>
        Enquiries, customers, sites, contacts, valves by tag, place and remark, quotes, files, notes, equipment and
        serial numbers. Accents and capitals do not matter; every word has to be there, and its beginning is enough.
      </p>
    </div>
  );
}

function Group({ group: { kind, entries, more }, words }: { readonly group: SearchGroup; readonly words: string }) {
  return (
    <section className="panel" aria-labelledby={`found-${kind}`}>
      <h2 id={`found-${kind}`}>{TITLES[kind]}</h2>
      <ul className="findings">
        {entries.map((entry) => (
          <li key={entry.id}>
            <Link href={hrefOf(kind, entry)}>
              {entry.title === '' ? (entry.owner?.name ?? 'open it') : <Marked text={entry.title} />}
            </Link>
            {entry.owner !== null && entry.title !== '' && <small> {entry.owner.name}</small>}
            {entry.over !== '' && <span className="mark"> {entry.over}</span>}
            {entry.snippet.trim() !== '' && (
              <small className="beside">
                <Marked text={entry.snippet} />
              </small>
            )}
          </li>
        ))}
      </ul>
      {more === 'yes' && (
        <p className="soft">
          {kind === 'enquiry' ? (
            <Link href={`/enquiries?${new URLSearchParams({ state: 'all', q: words })}`}>All of them</Link>
          ) : kind === 'customer' ? (
            <Link href={`/customers?${new URLSearchParams({ q: words })}`}>All of them</Link>
          ) : (
            'There are more; another word narrows it.'
          )}
        </p>
      )}
    </section>
  );
}

function hrefOf(...[kind, { id, owner, title }]: readonly [SearchGroup['kind'], SearchEntry]): string {
  const at = owner?.id ?? 0;
  switch (kind) {
    case 'enquiry':
      return `/enquiries/${id}`;
    case 'customer':
      return `/customers/${id}`;
    case 'site':
      return `/customers/${at}/sites/${id}`;
    case 'contact':
      return `/customers/${at}/contacts`;
    case 'quote':
      return `/enquiries/${at}/papers`;
    case 'line':
      return `/enquiries/${at}/lines/${id}`;
    case 'list':
      return `/enquiries/${at}/list`;
    case 'attachment':
    case 'note':
      return `/enquiries/${at}/notes`;
    case 'model':
      return `/equipment#${encodeURIComponent(title)}`;
    case 'unit':
      return '/equipment';
  }
}
