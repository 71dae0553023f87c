import { CopyText } from '#app/_ui/copy-text.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';

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
  { kind: 'lines-xlsx', name: 'Lines and price (workbook)' },
  { kind: 'lines-csv', name: 'Lines (CSV)' },
  { kind: 'price-csv', name: 'Price (CSV)' },
  { kind: 'mail-text', name: 'Words for a mail' },
] as const;

interface PapersProps {
  /** Where the papers are, without the kind. */
  readonly path: string;
  /** What the link is called for those who hear it, e.g. `draft`. */
  readonly which: string;
  /** How many options the quote offers; 0 or 1 where there is no choice. */
  readonly options: number;
}

/** What there is of each option: the kinds of the first, then those of the others with their number. */
function perOption<Kind extends { readonly kind: string; readonly name: string }>(
  kinds: readonly Kind[],
  options: number,
): readonly (Omit<Kind, 'kind' | 'name'> & { readonly kind: string; readonly name: string })[] {
  return Array.from({ length: Math.max(1, options) }, (_, index) => index + 1).flatMap((number) =>
    kinds.map(({ kind, name, ...rest }) => ({
      ...rest,
      kind: number === 1 ? kind : `${kind}-option-${number}`,
      name: options > 1 ? `${name}, option ${number}` : name,
    })),
  );
}

/** The quote for all options, and of each option its own papers. */
export function PriceDrafts({ path, options }: Pick<PapersProps, 'path' | 'options'>) {
  const [quote, ...others] = PAPERS;
  return (
    <ul className={styles.bare}>
      {[quote, ...perOption(others, options)].map(({ kind, name, about }) => (
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

export function PaperLinks({ path, which, options }: PapersProps) {
  const [quote, ...others] = PAPERS;
  return (
    <span className={styles.tags}>
      {[quote, ...perOption(others, options)].map(({ kind, name }) => (
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

interface FilesProps extends PapersProps {
  readonly hasPrices: 'yes' | 'no';
}

export function FileLinks({ path, which, options, hasPrices }: FilesProps) {
  const [quotation, ...others] = FILES;
  const files = others.filter(({ kind }) => kind !== 'price-csv' || hasPrices === 'yes');
  return (
    <span className={styles.tags}>
      {[...perOption([quotation], options), ...files].map(({ kind, name }) => (
        <a key={kind} href={`${path}/${kind}`} target="_blank" rel="noreferrer" aria-label={`${name} of ${which}`}>
          {name}
        </a>
      ))}
      <CopyText href={`${path}/mail-text`} what={`the words for a mail with ${which}`} />
    </span>
  );
}
