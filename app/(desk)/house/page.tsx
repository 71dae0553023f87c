import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { PlanRefused } from '#app/_ui/plan/plan-refused.tsx';
import { PRICE_SECTIONS, STANDING_SECTIONS } from '#lib/contracts/house-fields.ts';
import { readHouseRecord } from '#lib/services/house/house-record.ts';
import { ChangeHistory } from '../equipment/change-history.tsx';
import { HouseFacts } from './house-facts.tsx';
import { PriceDays, PricesForm, StandingForm } from './house-forms.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'House' };

export default async function HousePage() {
  const read = readHouseRecord(await asking());
  if (!read.ok) return <PlanRefused sentence={read.reason.sentence} />;
  const record = read.value;
  const now = record.prices.find(({ starts_on }) => starts_on === record.current)?.held;
  return (
    <>
      <div className="heading">
        <h1>{record.standing.name}</h1>
        <nav className="tools" aria-label="More of the house">
          <Link className="button" href="/equipment/rates">
            Rates
          </Link>
          <Link className="button" href="/rules/house">
            House rules
          </Link>
        </nav>
      </div>
      <section className="panel" aria-labelledby="days">
        <h2 id="days">What is charged beside rates</h2>
        <p>
          Taxes, waiver, deposit, delivery, labour and the price list hold from a day on, as rates do: a hire is priced
          by those that hold on its first day.
        </p>
        <PriceDays record={record} today={record.today} mayChange={record.mayChange} />
        {record.mayChange ? (
          <details>
            <summary>Put new prices on, beginning with those that hold</summary>
            <PricesForm key={`${record.prices.length}`} sections={PRICE_SECTIONS} record={record} />
          </details>
        ) : (
          <HouseFacts sections={PRICE_SECTIONS} value={now} currency={record.standing.currency} />
        )}
      </section>
      <section className="panel" aria-labelledby="standing">
        <h2 id="standing">What stands</h2>
        <p>Name, terms and work in the yard hold at once, in everything that is not issued yet.</p>
        {record.mayChange ? (
          <StandingForm key={record.version} sections={STANDING_SECTIONS} record={record} />
        ) : (
          <HouseFacts sections={STANDING_SECTIONS} value={record.standing} currency={record.standing.currency} />
        )}
      </section>
      <section className="panel" aria-labelledby="changes">
        <h2 id="changes">What changed</h2>
        <ChangeHistory changes={record.changes} />
      </section>
    </>
  );
}
