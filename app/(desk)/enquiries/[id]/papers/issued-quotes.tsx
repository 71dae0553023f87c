import styles from '#app/_ui/plan/plan-sheet.module.css';
import { amountText } from '#app/_ui/plan/plan-words.ts';
import { FileLinks, PaperLinks } from '#app/_ui/price/price-papers.tsx';
import { QuoteBooking } from '#app/_ui/price/quote-booking.tsx';
import { ShownDate, ShownWords } from '#app/_ui/shown-forms.client.tsx';
import { windowText } from '#lib/documents/words/print-values.ts';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import type { EnquiryView } from '#lib/services/enquiries/open-enquiry.ts';
import sheet from './price-sheet.module.css';
import { QuoteAccept } from './quote-accept.client.tsx';
import { QuoteFrozen } from './quote-frozen.client.tsx';
import { type QuoteMoveName, QuoteMoves } from './quote-moves.client.tsx';

type Quote = EnquiryView['quotes'][number];

/** Issued quotes, the newest first, each with its state, what can be done with it, and everything kept as issued. */
export function IssuedQuotes({ quotes }: { readonly quotes: readonly Quote[] }) {
  return (
    <section className={styles.panel} aria-labelledby="quotes">
      <h2 id="quotes">Issued quotes</h2>
      {quotes.length === 0 ? <p className={styles.soft}>No quote has been issued for this enquiry.</p> : null}
      {quotes.map((quote, index) => (
        <IssuedQuote key={quote.id} quote={quote} isNewest={index === 0} />
      ))}
    </section>
  );
}

function IssuedQuote({ quote, isNewest }: { readonly quote: Quote; readonly isNewest: boolean }) {
  const name = `${quote.number} ${quote.revision}`;
  const path = `/api/v1/quotes/${quote.id}/papers`;
  const { standing } = quote;
  return (
    <article className={sheet.quote} aria-label={name}>
      <div className={styles.spread}>
        <h3>
          {name} <span className={MARKS[standing.kind]}>{standing.kind === 'open' ? 'issued' : standing.kind}</span>
        </h3>
        <strong>
          <ShownWords>{totalsOf(quote)}</ShownWords>
        </strong>
      </div>
      <p className={styles.soft}>
        Issued <ShownDate on={quote.issued_on} />, valid until <ShownDate on={quote.valid_until} />
        {quote.state_reason === '' ? '' : ` · ${quote.state_reason} (${quote.state_by})`}
      </p>
      {isNewest && 'reason' in standing ? <p className={styles.soft}>{standing.reason.sentence}</p> : null}
      {quote.booking === null ? null : <QuoteBooking quote={quote} booking={quote.booking} />}
      <div className={styles.row}>
        {standing.kind === 'open' ? <Accept quote={quote} /> : null}
        <QuoteMoves
          quoteId={quote.id}
          quote={name}
          moves={movesOf(standing.kind)}
          closed={standing.kind === 'declined' || standing.kind === 'withdrawn' ? 'yes' : 'no'}
        />
      </div>
      <p>
        <PaperLinks path={path} which={name} options={quote.options.length} />
        <FileLinks path={path} which={name} options={quote.options.length} hasPrices={hasPrices(quote)} />
      </p>
      <QuoteFrozen quoteId={quote.id} quote={name} drawnBy={quote.drawnBy} papers={quote.papers} />
    </article>
  );
}

const MARKS: Readonly<Record<Quote['standing']['kind'], string | undefined>> = {
  open: styles.note,
  accepted: styles.mark,
  superseded: styles.note,
  lapsed: styles.warning,
  declined: styles.refusal,
  withdrawn: styles.note,
};

function movesOf(kind: Quote['standing']['kind']): readonly QuoteMoveName[] {
  switch (kind) {
    case 'open':
    case 'lapsed':
      return ['declined', 'withdrawn'];
    case 'accepted':
      return ['cancelled'];
    default:
      return [];
  }
}

function Accept({ quote }: { readonly quote: Quote }) {
  return (
    <QuoteAccept
      quoteId={quote.id}
      quote={`${quote.number} ${quote.revision}`}
      total={amountText(quote.currency, quote.total_minor)}
      days={
        quote.options.length === 0 ? windowText(rangeOfDays(quote.starts_on, quote.days)) : 'the days of that option'
      }
      options={quote.options.map(({ slot, name, total_minor }) => ({
        slot,
        name,
        total: amountText(quote.currency, total_minor),
      }))}
      orderNumber={quote.orderNumber}
    />
  );
}

function totalsOf({ options, currency, total_minor }: Quote): string {
  if (options.length === 0) return `${amountText(currency, total_minor)} with tax`;
  return `${options.map((option) => amountText(currency, option.total_minor)).join(' or ')} with tax`;
}

/** Quotes from before prices went along as a file have none. */
function hasPrices({ papers }: Quote): 'yes' | 'no' {
  return papers.some(({ kind }) => kind === 'price-csv') ? 'yes' : 'no';
}
