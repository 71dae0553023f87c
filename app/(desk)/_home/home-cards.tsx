import type { ReactNode } from 'react';
import { ShownDate, ShownMoment, ShownMoney } from '#app/_ui/shown-forms.client.tsx';
import { StateMark } from '#app/_ui/state-mark.tsx';
import type { HomeView } from '#lib/services/house/open-home.ts';
import { HomeCard } from './home-card.tsx';

/** What needs somebody today, one card a kind; what asks for something has an amber edge. */
export function HomeCards({ home }: { readonly home: HomeView }) {
  return (
    <div className="cards house-cards">
      <HomeCard
        title="Due"
        entries={home.due}
        asks={home.due.some(({ inDays }) => inDays <= 0)}
        empty="No answer is due within a week. An enquiry shows here once it has a day by which the customer waits for it."
        tell={({ inDays, dueOn, mine, assignedName }) => (
          <>
            <Mark urgent={inDays <= 0}>{dayText({ inDays, day: dueOn, past: 'overdue since' })}</Mark>{' '}
            {mine ? 'yours' : assignedName === '' ? 'nobody’s yet' : assignedName}
          </>
        )}
      />
      <HomeCard
        title="Self-service"
        entries={home.selfServed}
        asks={home.selfServed.some(({ stage }) => stage === 'handed over' || stage === 'accepted')}
        empty="Nothing came by self-service that nobody has taken over."
        tell={({ stage, stageAt }) => (
          <>
            <Mark urgent={stage === 'handed over'}>{stage}</Mark> <ShownMoment at={stageAt} />
          </>
        )}
      />
      {home.askedByLink.length > 0 && <AskedByLinkCard home={home} />}
      <HomeCard
        title="Quotes about to lapse"
        entries={home.lapsing}
        tab="/papers"
        asks={home.lapsing.length > 0}
        empty="No open quote ends within a week."
        tell={({ inDays, validUntil, quote, total_minor, currency }) => (
          <>
            <Mark urgent={inDays < 2}>{dayText({ inDays, day: validUntil, past: 'lapsed on' })}</Mark> {quote},{' '}
            <ShownMoney minor={total_minor} currency={currency} /> {currency}
          </>
        )}
      />
      <HomeCard
        title="Discounts to decide"
        entries={home.approvals}
        tab="/papers"
        asks={home.approvals.some(({ own }) => !own)}
        empty="Nobody waits for a discount to be approved."
        tell={({ reason, askedByName, own }) => `${own ? 'You asked' : `${askedByName} asks`}: ${reason}`}
      />
      <StockCards home={home} />
      <HomeCard
        title="Changed last"
        entries={home.changed.map((row) => ({ ...row, enquiryId: row.id }))}
        empty="Nothing was changed yet."
        tell={({ state, updated_at }) => (
          <>
            <StateMark state={state} /> <ShownMoment at={updated_at} />
          </>
        )}
      />
    </div>
  );
}

/** Off-hire notices and extensions that customers gave through their link. */
function AskedByLinkCard({ home }: { readonly home: HomeView }) {
  return (
    <HomeCard
      title="Asked by link"
      entries={home.askedByLink}
      asks
      empty=""
      tell={(ask) =>
        ask.kind === 'extension' ? (
          <>
            <Mark urgent>
              wants {ask.booking} until <ShownDate on={ask.until} />
            </Mark>{' '}
            asked <ShownMoment at={ask.at} />
          </>
        ) : (
          <>
            <Mark>
              off hire {ask.booking}, {ask.notice}
            </Mark>{' '}
            {ask.saidBy}, <ShownMoment at={ask.at} />
          </>
        )
      }
    />
  );
}

/** Equipment that is not where it should be. */
function StockCards({ home }: { readonly home: HomeView }) {
  return (
    <>
      <HomeCard
        title="Short of equipment"
        entries={home.short}
        tab="/kits"
        asks={home.short.length > 0}
        empty="Everything that is planned or booked is there on its dates."
        tell={({ kind, startsOn, sentences }) => (
          <>
            <Mark urgent={kind === 'booked'}>
              {kind} from <ShownDate on={startsOn} />
            </Mark>{' '}
            {sentences.slice(0, 2).join(' ')}
            {sentences.length > 2 ? ` And ${sentences.length - 2} more.` : ''}
          </>
        )}
      />
      <HomeCard
        title="Not back yet"
        entries={home.late}
        tab="/papers"
        asks={home.late.length > 0}
        empty="Every booking whose last day is past is back."
        tell={({ booking, endedBefore, units }) => (
          <>
            <Mark urgent>
              free again from <ShownDate on={endedBefore} />
            </Mark>{' '}
            {booking}: {units} {units === 1 ? 'unit is' : 'units are'} not marked as back
          </>
        )}
      />
    </>
  );
}

function Mark({ urgent = false, children }: { readonly urgent?: boolean; readonly children: ReactNode }) {
  return <span className={urgent ? 'mark warning' : 'mark'}>{children}</span>;
}

function dayText({
  inDays,
  day,
  past,
}: {
  readonly inDays: number;
  readonly day: string;
  readonly past: string;
}): ReactNode {
  if (inDays < 0)
    return (
      <>
        {past} <ShownDate on={day} />
      </>
    );
  if (inDays === 0) return 'today';
  return inDays === 1 ? 'tomorrow' : `in ${inDays} days`;
}
