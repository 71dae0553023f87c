import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { PlanRefused } from '#app/_ui/plan/plan-refused.tsx';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import { listCardDays } from '#lib/services/equipment/list-card-days.ts';
import { CsvExchange } from '../csv-exchange.client.tsx';
import { RaiseRates } from '../raise-rates.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Rates' };

export default async function RatesPage() {
  const listed = listCardDays(await asking());
  if (!listed.ok) return <PlanRefused sentence={listed.reason.sentence} />;
  const { days, currency, mayChange } = listed.value;
  return (
    <>
      <p className="soft">
        <Link href="/equipment">Equipment</Link> / rates
      </p>
      <h1>Rates</h1>
      <p>
        Rates stand on cards with the day from which they hold. A hire is priced from its first day to its last by the
        card that holds on its first day, whenever it was quoted; the quote says so. Quotes that were issued never
        change.
      </p>
      <section className="panel" aria-labelledby="days">
        <h2 id="days">Days on which cards begin</h2>
        {days.length === 0 ? <p>None yet: every model still has the rates that it began with.</p> : null}
        <ul>
          {days.map((day) => (
            <li key={day.starts_on}>
              <ShownDate on={day.starts_on} />: {day.models} {day.models === 1 ? 'model' : 'models'}{' '}
              <span className="mark">{day.when}</span> <span className="soft">{day.notes.join(', ')}</span>
            </li>
          ))}
        </ul>
      </section>
      {mayChange ? (
        <section className="panel" aria-labelledby="raise">
          <h2 id="raise">Raise all of a role</h2>
          <RaiseRates currency={currency} />
        </section>
      ) : null}
      <section className="panel" aria-labelledby="file">
        <h2 id="file">All cards as a file</h2>
        <CsvExchange path="/api/v1/rates" what="rates" mayChange={mayChange} />
      </section>
    </>
  );
}
