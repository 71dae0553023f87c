'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { ShownDate, ShownMoney } from '#app/_ui/shown-forms.client.tsx';
import { decimalText } from '#lib/money/currency.ts';
import type { RateCardView } from '#lib/services/equipment/open-model.ts';
import styles from './equipment.module.css';
import { minorOf } from './minor-of.ts';
import { RateHeads } from './rate-heads.tsx';

interface ModelRatesProps {
  readonly number: string;
  readonly currency: string;
  readonly cards: readonly RateCardView[];
  readonly mayChange: boolean;
}

/** Rate cards by the day from which they hold, and a form for the next one. */
export function ModelRates({ number, currency, cards, mayChange }: ModelRatesProps) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  const takeOff = async (day: string) => {
    const sent = await send({ method: 'DELETE', path: `/api/v1/equipment/${number}/rates/${day}` });
    setSaid(sent.ok ? '' : sent.sentence);
    if (sent.ok) router.refresh();
  };
  return (
    <>
      <p className="soft">A hire is priced from its first day to its last by the card that holds on its first day.</p>
      <PlanWide label="Rate cards">
        <table>
          <thead>
            <tr>
              <th scope="col">From</th>
              <RateHeads currency={currency} />
              <th scope="col" className="number">
                Minimum days
              </th>
              <th scope="col">Note</th>
              <th scope="col">State</th>
            </tr>
          </thead>
          <tbody>
            {cards.map((card) => (
              <tr key={card.starts_on ?? ''} className={card.when === 'past' ? styles.past : ''}>
                <th scope="row">{card.starts_on === null ? 'the beginning' : <ShownDate on={card.starts_on} />}</th>
                <td className="number">
                  <ShownMoney minor={card.day_minor} currency={currency} />
                </td>
                <td className="number">
                  <ShownMoney minor={card.week_minor} currency={currency} />
                </td>
                <td className="number">
                  <ShownMoney minor={card.four_weeks_minor} currency={currency} />
                </td>
                <td className="number">{card.minimum_days}</td>
                <td>{card.note}</td>
                <td>
                  <span className="mark">{card.when}</span>{' '}
                  {mayChange && card.when === 'to come' && card.starts_on !== null ? (
                    <button type="button" className="quiet small" onClick={() => takeOff(card.starts_on ?? '')}>
                      Take off
                    </button>
                  ) : null}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </PlanWide>
      <p role="status" className={said === '' ? '' : 'notice refusal'}>
        {said}
      </p>
      {mayChange ? <NextCard number={number} currency={currency} last={cards[0]} onSaid={setSaid} /> : null}
    </>
  );
}

interface NextCardProps {
  readonly number: string;
  readonly currency: string;
  readonly last: RateCardView | undefined;
  readonly onSaid: (sentence: string) => void;
}

function NextCard({ number, currency, last, onSaid }: NextCardProps) {
  const router = useRouter();
  const save = async (form: FormData) => {
    const text = (name: string) => String(form.get(name) ?? '').trim();
    const amounts = ['day', 'week', 'four'].map((name) => minorOf(text(name), currency));
    const [day_minor, week_minor, four_weeks_minor] = amounts;
    if (amounts.some((amount) => amount === null)) {
      onSaid(`Write each rate in ${currency} with digits and a point, for example ${decimalText(3450, currency)}.`);
      return;
    }
    const body = {
      starts_on: text('from'),
      day_minor,
      week_minor,
      four_weeks_minor,
      minimum_days: Number(text('minimum')),
      note: text('note'),
    };
    const sent = await send({ method: 'POST', path: `/api/v1/equipment/${number}/rates`, body });
    onSaid(sent.ok ? '' : sent.sentence);
    if (sent.ok) router.refresh();
  };
  const amount = (value: number | undefined) => decimalText(value ?? 0, currency);
  return (
    <details>
      <summary>Put a card on</summary>
      <form action={save} className="tools">
        <div>
          <label htmlFor="card-from">From</label>
          <input id="card-from" name="from" type="date" required />
        </div>
        <Amount name="day" label={`Day, ${currency}`} value={amount(last?.day_minor)} />
        <Amount name="week" label="Week" value={amount(last?.week_minor)} />
        <Amount name="four" label="Four weeks" value={amount(last?.four_weeks_minor)} />
        <div>
          <label htmlFor="card-minimum">Minimum days</label>
          <input
            id="card-minimum"
            name="minimum"
            type="number"
            min={1}
            max={60}
            className={styles.narrow}
            defaultValue={last?.minimum_days ?? 1}
          />
        </div>
        <div>
          <label htmlFor="card-note">Note</label>
          <input id="card-note" name="note" maxLength={200} placeholder="why" />
        </div>
        <button type="submit" className="main">
          Put on
        </button>
      </form>
    </details>
  );
}

function Amount({ name, label, value }: { readonly name: string; readonly label: string; readonly value: string }) {
  return (
    <div>
      <label htmlFor={`card-${name}`}>{label}</label>
      <input id={`card-${name}`} name={name} inputMode="decimal" className={styles.narrow} defaultValue={value} />
    </div>
  );
}
