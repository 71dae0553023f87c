import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { PlanRefused } from '#app/_ui/plan-refused.tsx';
import styles from '#app/_ui/plan-sheet.module.css';
import { moneyIn, PREFERENCE_NAMES } from '#app/_ui/plan-words.ts';
import { PriceLines } from '#app/_ui/price-lines.tsx';
import { PriceDrafts, PriceQuotes } from '#app/_ui/price-papers.tsx';
import { QuoteBooking } from '#app/_ui/quote-booking.tsx';
import { windowText } from '#lib/documents/print-values.ts';
import { GENERAL_CAUTIONS } from '#lib/documents/safety-words.ts';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import { type EnquiryView, openEnquiry } from '#lib/services/open-enquiry.ts';
import { type PlanView, readPlanView } from '#lib/services/plan-view.ts';
import { PlanRun } from '../kits/plan-run.client.tsx';
import { PaperUnits } from './paper-units.client.tsx';
import { PriceIssue } from './price-issue.client.tsx';
import { QuoteAccept } from './quote-accept.client.tsx';

export const dynamic = 'force-dynamic';

export default async function PapersPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const enquiryId = idOf((await params).id);
  const house = await asking();
  const enquiry = openEnquiry(house, enquiryId);
  if (!enquiry.ok) return <PlanRefused sentence={enquiry.reason.sentence} />;
  const view = readPlanView(house, { enquiryId });
  if (!view.ok) return <PlanRefused sentence={view.reason.sentence} />;
  const { quotes } = enquiry.value;
  return (
    <div className={styles.page}>
      <Priced enquiry={enquiry.value} view={view.value} />
      <section className={styles.panel} aria-labelledby="quotes">
        <h2 id="quotes">Issued quotes</h2>
        <PriceQuotes quotes={quotes} />
        <Acceptance quotes={quotes} />
      </section>
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

/** The booking of the quote that was accepted, or the way to accept the newest one. */
function Acceptance({ quotes }: { readonly quotes: EnquiryView['quotes'] }) {
  const accepted = quotes.find(({ booking }) => booking !== null);
  if (accepted?.booking) return <QuoteBooking quote={accepted} booking={accepted.booking} />;
  const [newest] = quotes;
  if (!newest) return null;
  const { standing } = newest;
  if (standing.kind !== 'open') {
    return standing.kind === 'accepted' ? null : <p className={styles.soft}>{standing.reason.sentence}</p>;
  }
  return (
    <QuoteAccept
      quoteId={newest.id}
      quote={`${newest.number} ${newest.revision}`}
      total={moneyIn(newest.currency, newest.total_minor)}
      days={windowText(rangeOfDays(newest.starts_on, newest.days))}
    />
  );
}

interface PricedProps {
  readonly enquiry: EnquiryView;
  readonly view: PlanView | null;
}

function Priced({ enquiry, view }: PricedProps) {
  const { id, plan, quotes } = enquiry;
  const price = view?.price ?? null;
  if (view === null || price === null) {
    return (
      <>
        <PlanRun enquiryId={id} state={plan} lines={enquiry.lines} />
        <p className={styles.soft}>There is no price yet: it follows the plan.</p>
      </>
    );
  }
  const current = plan.kind === 'ready' && plan.current;
  const name = PREFERENCE_NAMES[view.shown];
  return (
    <>
      <PlanRun enquiryId={id} state={plan} lines={enquiry.lines} />
      <section className={styles.panel} aria-labelledby="price">
        <div className={styles.spread}>
          <h2 id="price">Price of the plan: {name}</h2>
          <strong>{moneyIn(price.currency, price.gross_minor)} with tax</strong>
        </div>
        <PriceLines price={price} />
        {price.notes.length === 0 ? null : (
          <ul className={styles.after}>
            {price.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        )}
      </section>
      <section className={styles.panel} aria-labelledby="papers">
        <h2 id="papers">Papers</h2>
        <PaperUnits enquiryId={id} units={enquiry.paperUnits} />
        {current ? (
          <PriceDrafts path={`/api/v1/enquiries/${id}/papers`} />
        ) : (
          <p className={styles.soft}>Drafts are drawn from a plan that is up to date.</p>
        )}
        <h3>Issue</h3>
        <PriceIssue
          enquiryId={id}
          total={moneyIn(price.currency, price.gross_minor)}
          plan={name}
          hindrance={current ? '' : 'A quote can be issued once the plan is up to date.'}
          isRevision={quotes.length > 0 ? 'yes' : 'no'}
        />
      </section>
    </>
  );
}
