import { dateText } from '#lib/documents/print-values.ts';
import type { EnquiryView } from '#lib/services/open-enquiry.ts';
import { CopyText } from './copy-text.client.tsx';
import styles from './plan-sheet.module.css';
import { PlanWide } from './plan-wide.tsx';
import { moneyIn } from './plan-words.ts';

const PAPERS = [
  { kind: 'quote', name: 'Quote', about: 'for the customer: price, terms, assumptions, what is not served' },
  {
    kind: 'packing-list',
    name: 'Packing list',
    about: 'for the depot and the carrier: cases, masses, what to declare',
  },
  { kind: 'site-sheet', name: 'Site sheet', about: 'for the crew: line by line, settings, what to write down' },
  { kind: 'calculation', name: 'Calculation sheet', about: 'for whoever checks: every number with its basis' },
] as const;

const FILES = [
  { kind: 'quotation-xml', name: 'Quotation (UBL 2.1 XML)' },
  { kind: 'lines-xlsx', name: 'Lines (workbook)' },
  { kind: 'lines-csv', name: 'Lines (CSV)' },
  { kind: 'mail-text', name: 'Words for a mail' },
] as const;

interface PapersProps {
  /** Where the papers are, without the kind. */
  readonly path: string;
  /** What the link is called for those who hear it, e.g. `draft`. */
  readonly which: string;
}

export function PriceDrafts({ path }: { readonly path: string }) {
  return (
    <ul className={styles.bare}>
      {PAPERS.map(({ kind, name, about }) => (
        <li key={kind}>
          <a href={`${path}/${kind}`} target="_blank" rel="noreferrer">
            {name}, draft (PDF, opens beside this page)
          </a>
          <br />
          <span className={styles.soft}>{about}</span>
        </li>
      ))}
    </ul>
  );
}

function PaperLinks({ path, which }: PapersProps) {
  return (
    <span className={styles.tags}>
      {PAPERS.map(({ kind, name }) => (
        <a
          key={kind}
          href={`${path}/${kind}`}
          target="_blank"
          rel="noreferrer"
          aria-label={`${name} of ${which} (PDF)`}
        >
          {name}
        </a>
      ))}
    </span>
  );
}

function FileLinks({ path, which }: PapersProps) {
  return (
    <span className={styles.tags}>
      {FILES.map(({ kind, name }) => (
        <a key={kind} href={`${path}/${kind}`} target="_blank" rel="noreferrer" aria-label={`${name} of ${which}`}>
          {name}
        </a>
      ))}
      <CopyText href={`${path}/mail-text`} what={`the words for a mail with ${which}`} />
    </span>
  );
}

/** Issued quotes, the newest first, each with papers and files as they were issued. */
export function PriceQuotes({ quotes }: { readonly quotes: EnquiryView['quotes'] }) {
  if (quotes.length === 0) return <p className={styles.soft}>No quote has been issued for this enquiry.</p>;
  return (
    <PlanWide label="Table of issued quotes">
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Quote</th>
            <th scope="col">State</th>
            <th scope="col">Issued</th>
            <th scope="col">Valid until</th>
            <th scope="col" className={styles.number}>
              Price with tax
            </th>
            <th scope="col">Papers as issued</th>
            <th scope="col">Files as issued</th>
          </tr>
        </thead>
        <tbody>
          {quotes.map((quote) => (
            <tr key={quote.id}>
              <th scope="row">
                {quote.number} {quote.revision}
              </th>
              <td>{quote.standing.kind === 'open' ? 'issued' : quote.standing.kind}</td>
              <td>{dateText(quote.issued_on)}</td>
              <td>{dateText(quote.valid_until)}</td>
              <td className={styles.number}>{moneyIn(quote.currency, quote.total_minor)}</td>
              <td>
                <PaperLinks path={`/api/v1/quotes/${quote.id}/papers`} which={`${quote.number} ${quote.revision}`} />
              </td>
              <td>
                <FileLinks path={`/api/v1/quotes/${quote.id}/papers`} which={`${quote.number} ${quote.revision}`} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </PlanWide>
  );
}
