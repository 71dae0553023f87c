import { hirePaths } from '#app/_lib/hire-paths.ts';
import type { OrderQuote } from '#lib/services/self-service/order-quotes.ts';
import type { OrderView } from '#lib/services/self-service/order-view.ts';
import { amountIn, dayIn } from '#lib/wording/forms.ts';
import type { Language } from '#lib/wording/language.ts';
import { keyOf, say } from '#lib/wording/wording.ts';
import formLook from './form.module.css';
import { Choice, Field } from './frame-blocks.tsx';
import sheetLook from './sheet.module.css';
import toldLook from './told.module.css';

interface SheetProps {
  readonly order: OrderView;
  readonly token: string;
  readonly language: Language;
}

/** The quote as it was issued, and the one form that orders it. */
export function QuoteSheet({ order, token, language }: SheetProps) {
  const { quote, stage, contact } = order;
  if (quote === null) return null;
  const amount = amountIn(language, { amount_minor: quote.total_minor, currency: quote.currency });
  const mayAccept = order.mayAct && stage === 'quoted' && quote.standing === 'open' && !order.withDesk;
  return (
    <section className={sheetLook.sheet} aria-labelledby="quote">
      <h2 id="quote">{say(language, 'quote.title', { quote: quote.name })}</h2>
      <p className={toldLook.total}>
        {amount} {quote.currency}
      </p>
      <Validity quote={quote} language={language} />
      <p className={sheetLook.row}>
        <a className="button" href={hirePaths.paper(token, 'quote')}>
          {say(language, 'quote.pdf')}
          <PaperLanguage quote={quote} language={language} />
        </a>
        <a className="button" href={hirePaths.paper(token, 'summary')}>
          {say(language, 'quote.summary')}
        </a>
      </p>
      {mayAccept && (
        <form method="post" action={hirePaths.deed(token, 'accept')} className={sheetLook.inner}>
          <h3>{say(language, 'quote.accept-title')}</h3>
          <input type="hidden" name="quote" value={quote.name} />
          {quote.options.length > 0 && (
            <Choice
              name="option"
              legend={say(language, 'quote.option')}
              chosen=""
              options={quote.options.map(({ slot, name, gross_minor }) => ({
                value: String(slot),
                words: `${name}: ${amountIn(language, { amount_minor: gross_minor, currency: quote.currency })} ${quote.currency}`,
              }))}
            />
          )}
          <Field name="accept-name" label={say(language, 'contact.name')}>
            <input
              id="accept-name"
              name="name"
              required
              maxLength={120}
              autoComplete="name"
              defaultValue={contact.name ?? ''}
            />
          </Field>
          <Field name="order_number" label={say(language, 'quote.order-number')}>
            <input id="order_number" name="order_number" required maxLength={60} autoComplete="off" />
          </Field>
          <label className={formLook.tick}>
            <input type="checkbox" name="terms" value="accepted" required />
            <span>{say(language, 'quote.terms')}</span>
          </label>
          <button type="submit" className={`button main ${formLook.wide}`}>
            {quote.options.length > 0
              ? say(language, 'quote.accept-some')
              : say(language, 'quote.accept', { amount, currency: quote.currency })}
          </button>
        </form>
      )}
      <Older order={order} language={language} />
    </section>
  );
}

/** Papers stay in the language in which they were issued; said where the page is in another. */
export function PaperLanguage({
  quote,
  language,
}: {
  readonly quote: Pick<OrderQuote, 'language'> | null;
  readonly language: Language;
}) {
  const drawn = quote?.language ?? 'en';
  return drawn === language ? null : ` (${say(language, `paper.in-${drawn}`)})`;
}

function Validity({ quote, language }: { readonly quote: OrderQuote; readonly language: Language }) {
  const date = dayIn(language, quote.validUntil);
  const closed = CLOSED[quote.standing];
  if (closed !== undefined) return <p className={sheetLook.notFree}>{say(language, closed, { date })}</p>;
  return quote.standing === 'open' ? <p>{say(language, 'quote.valid', { date })}</p> : null;
}

const CLOSED: Partial<Readonly<Record<OrderQuote['standing'], 'quote.lapsed' | 'quote.declined' | 'quote.withdrawn'>>> =
  { lapsed: 'quote.lapsed', declined: 'quote.declined', withdrawn: 'quote.withdrawn' };

/** Revisions that no longer stand, so that nobody orders by an old paper. */
function Older({ order, language }: Pick<SheetProps, 'order' | 'language'>) {
  if (order.older.length === 0) return null;
  return (
    <div className={sheetLook.inner}>
      <h3>{say(language, 'older.title')}</h3>
      <ul className={toldLook.pieces}>
        {order.older.map(({ name, standing }) => (
          <li key={name}>{say(language, keyOf('older', standing) ?? 'older.other', { quote: name })}</li>
        ))}
      </ul>
    </div>
  );
}
