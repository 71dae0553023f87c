'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { HouseSection } from '#lib/contracts/house-fields.ts';
import type { HouseRecord } from '#lib/services/house/house-record.ts';
import { RecordForm } from './record-form.client.tsx';

interface StandingFormProps {
  readonly sections: readonly HouseSection[];
  readonly record: HouseRecord;
}

/** What stands and holds at once. */
export function StandingForm({ sections, record }: StandingFormProps) {
  const router = useRouter();
  return (
    <RecordForm
      sections={sections}
      currency={record.standing.currency}
      start={record.standing}
      act="Save the house"
      onSave={async (standing) => {
        const body = { part: 'standing', version: record.version, standing };
        const sent = await send({ method: 'POST', path: '/api/v1/house', body });
        if (!sent.ok) return { said: sent.sentence, problems: sent.problems };
        router.refresh();
        return { said: 'Saved.', problems: [] };
      }}
    />
  );
}

/** What is charged, from a day on. */
export function PricesForm({ sections, record }: StandingFormProps) {
  const router = useRouter();
  const [day, setDay] = useState('');
  const [note, setNote] = useState('');
  const now = record.prices.find(({ starts_on }) => starts_on === record.current);
  return (
    <>
      <div className="tools">
        <div>
          <label htmlFor="prices-from">These hold from</label>
          <input id="prices-from" type="date" value={day} onChange={(event) => setDay(event.target.value)} />
        </div>
        <div>
          <label htmlFor="prices-note">Note</label>
          <input id="prices-note" value={note} maxLength={200} onChange={(event) => setNote(event.target.value)} />
        </div>
      </div>
      <RecordForm
        sections={sections}
        currency={record.standing.currency}
        start={now?.held ?? {}}
        act="Put these prices on"
        onSave={async (held) => {
          const body = { part: 'prices', starts_on: day, note, held };
          const sent = await send({ method: 'POST', path: '/api/v1/house', body });
          if (!sent.ok) return { said: sent.sentence, problems: sent.problems };
          router.refresh();
          return { said: `They hold from ${day}.`, problems: [] };
        }}
      />
    </>
  );
}

interface PriceDaysProps {
  readonly record: HouseRecord;
  readonly today: string;
  readonly mayChange: boolean;
}

export function PriceDays({ record, today, mayChange }: PriceDaysProps) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  const takeOff = async (day: string) => {
    const sent = await send({ method: 'DELETE', path: `/api/v1/house/prices/${day}` });
    setSaid(sent.ok ? '' : sent.sentence);
    if (sent.ok) router.refresh();
  };
  return (
    <>
      <ul>
        {record.prices.toReversed().map(({ starts_on, note }) => (
          <li key={starts_on ?? ''}>
            {starts_on ?? 'From the beginning'}{' '}
            <span className="mark">
              {starts_on === record.current ? 'holds' : (starts_on ?? '') > today ? 'to come' : 'past'}
            </span>{' '}
            <span className="soft">{note}</span>{' '}
            {mayChange && starts_on !== null && starts_on > today ? (
              <button type="button" className="quiet small" onClick={() => takeOff(starts_on)}>
                Take off
              </button>
            ) : null}
          </li>
        ))}
      </ul>
      <p role="status" className={said === '' ? '' : 'notice refusal'}>
        {said}
      </p>
    </>
  );
}
