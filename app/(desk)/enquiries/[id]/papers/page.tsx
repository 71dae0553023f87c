import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { PlanRefused } from '#app/_ui/plan/plan-refused.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { amountText } from '#app/_ui/plan/plan-words.ts';
import { PriceChanges } from '#app/_ui/price/price-changes.tsx';
import { PriceLines } from '#app/_ui/price/price-lines.tsx';
import { PriceDrafts } from '#app/_ui/price/price-papers.tsx';
import { ShownMoney, ShownWords } from '#app/_ui/shown-forms.client.tsx';
import { constraintsToJson } from '#lib/contracts/constraints.ts';
import { GENERAL_CAUTIONS } from '#lib/documents/words/safety-words.ts';
import { type EnquiryView, openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { type PriceView, readPriceView } from '#lib/services/quotes/price-view.ts';
import { PlanRun } from '../kits/plan-run.client.tsx';
import { IssuedQuotes } from './issued-quotes.tsx';
import { PaperUnits } from './paper-units.client.tsx';
import { PriceApproval } from './price-approval.client.tsx';
import { PriceEditor } from './price-editor.client.tsx';
import { PriceIssue } from './price-issue.client.tsx';
import { PriceOptions } from './price-options.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Price & papers' };

interface PageProps {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly option?: string | readonly string[] }>;
}

export default async function PapersPage({ params, searchParams }: PageProps) {
  const enquiryId = idOf((await params).id);
  const slot = idOf(String((await searchParams).option ?? ''));
  const house = await asking();
  const enquiry = openEnquiry(house, enquiryId);
  if (!enquiry.ok) return <PlanRefused sentence={enquiry.reason.sentence} />;
  const view = readPriceView(house, { enquiryId, slot });
  if (!view.ok) return <PlanRefused sentence={view.reason.sentence} />;
  return (
    <div className={styles.page}>
      <Offer enquiry={enquiry.value} view={view.value} />
      <Paper enquiry={enquiry.value} view={view.value} />
      <IssuedQuotes quotes={enquiry.value.quotes} />
      <section className={styles.notice} aria-labelledby="cautions">
        <h2 id="cautions" className={styles.title}>
          Before anyone turns a valve
        </h2>
        <ul className={styles.list}>
          {GENERAL_CAUTIONS.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </section>
    </div>
  );
}

interface Shown {
  readonly enquiry: EnquiryView;
  readonly view: PriceView;
}

/** The options, and the price of the one that is shown. */
function Offer({ enquiry, view }: Shown) {
  const { shown, options } = view;
  const summary = options.find(({ slot }) => slot === shown.slot);
  return (
    <>
      <PriceOptions
        enquiryId={enquiry.id}
        view={view}
        constraints={constraintsToJson(enquiry.constraints) as Record<string, unknown>}
      />
      <PlanRun
        key={shown.slot}
        enquiryId={enquiry.id}
        slot={shown.slot}
        state={summary?.state ?? enquiry.plan}
        lines={enquiry.lines}
      />
      {shown.price === null ? (
        <p className={styles.soft}>There is no price yet: it follows the plan.</p>
      ) : (
        <PricePanel shown={shown} name={options.length === 1 ? '' : shown.choices.name} price={shown.price} />
      )}
      <PriceEditor enquiryId={enquiry.id} view={view} />
      {shown.discount === null ? null : (
        <PriceApproval enquiryId={enquiry.id} slot={shown.slot} discount={shown.discount} me={view.me} />
      )}
    </>
  );
}

interface PriceProps {
  readonly shown: PriceView['shown'];
  readonly name: string;
  readonly price: NonNullable<PriceView['shown']['price']>;
}

function PricePanel({ shown, name, price }: PriceProps) {
  return (
    <section className={styles.panel} aria-labelledby="price">
      <div className={styles.spread}>
        <h2 id="price">Price{name === '' ? '' : ` of “${name}”`}</h2>
        <strong>
          <ShownMoney minor={price.gross_minor} currency={price.currency} /> {price.currency} with tax
        </strong>
      </div>
      <PriceLines price={price} />
      {shown.payment === null ? null : (
        <>
          <h3>Payment</h3>
          <ul className={styles.list}>
            {shown.payment.sentences.map((sentence) => (
              <li key={sentence}>
                <ShownWords>{sentence}</ShownWords>
              </li>
            ))}
          </ul>
        </>
      )}
      {price.notes.length === 0 ? null : (
        <ul className={styles.after}>
          {price.notes.map((note) => (
            <li key={note}>
              <ShownWords>{note}</ShownWords>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** Drafts, what a revision changes, and the way to issue it. */
function Paper({ enquiry, view }: Shown) {
  const { id, quotes } = enquiry;
  const waiting = view.options.filter(({ hindrance }) => hindrance !== '');
  const planned = view.options.every(({ state }) => state.kind === 'ready' && state.current);
  const totals = view.options.flatMap(({ figures }) =>
    figures === null ? [] : [amountText(view.currency, figures.gross_minor)],
  );
  return (
    <>
      {view.changes === null || quotes.length === 0 ? null : <PriceChanges changes={view.changes} />}
      <section className={styles.panel} aria-labelledby="papers">
        <h2 id="papers">Papers</h2>
        <PaperUnits enquiryId={id} units={enquiry.paperUnits} />
        {planned ? (
          <PriceDrafts path={`/api/v1/enquiries/${id}/papers`} options={view.options.length} />
        ) : (
          <p className={styles.soft}>Drafts are drawn from a plan that is up to date.</p>
        )}
        <h3>Issue</h3>
        <PriceIssue
          enquiryId={id}
          total={totals.join(' or ')}
          hindrances={waiting.map(({ name, hindrance }) =>
            view.options.length === 1 ? hindrance : `“${name}”: ${hindrance}`,
          )}
          isRevision={quotes.length > 0 ? 'yes' : 'no'}
        />
      </section>
    </>
  );
}
