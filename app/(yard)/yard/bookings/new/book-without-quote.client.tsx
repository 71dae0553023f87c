'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import type { NewBookingForm } from '#lib/services/yard/new-booking-form.ts';
import { BOOKING_PURPOSES, type BookingPurpose } from '#lib/stock/booking-purpose.ts';
import { SaidLine } from '../../../_blocks/said.tsx';
import { useAct } from '../../../_blocks/use-act.client.ts';
import { askedOf, type Draft } from './booking-draft.ts';
import { NeedRows } from './need-rows.client.tsx';
import { WhatIsFree } from './what-is-free.client.tsx';

const PURPOSE_WORDS: Readonly<Record<BookingPurpose, string>> = {
  customer: 'Kept for a customer',
  demonstration: 'Demonstration',
  training: 'Training',
  'own maintenance': 'Own maintenance',
  other: 'Something else',
};

interface BookProps {
  readonly form: NewBookingForm;
}

/** Who or what for, from where, which days, which models; what is free is told while it is filled in. */
export function BookWithoutQuote({ form }: BookProps) {
  const router = useRouter();
  const { act, said, busy } = useAct('/api/v1/yard/bookings');
  const [draft, setDraft] = useState<Draft>({
    purpose: 'customer',
    customer: '',
    why: '',
    depot: form.depots[0]?.code ?? '',
    startsOn: form.today,
    lastDay: form.today,
    heldTo: '',
    needs: [{ id: 1, model: '', count: '1' }],
  });
  const set = (change: Partial<Draft>): void => setDraft({ ...draft, ...change });
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    void act<{ number: string }>({ body: askedOf(draft), done: () => null }).then(
      (booked) => booked !== null && router.push(`/yard/bookings/${booked.number}`),
    );
  };
  return (
    <form onSubmit={submit} aria-label="Book without a quote">
      <section className="panel" aria-label="What for">
        <div className="fields">
          <WhatFor draft={draft} set={set} customers={form.customers} />
          <When draft={draft} set={set} form={form} />
        </div>
      </section>
      <section className="panel" aria-labelledby="models">
        <h2 id="models">Models</h2>
        <NeedRows needs={draft.needs} models={form.models} onChange={(needs) => set({ needs })} />
      </section>
      <WhatIsFree draft={draft} />
      <p className="tools">
        <button type="submit" className="main" disabled={busy} aria-busy={busy}>
          Book it
        </button>
      </p>
      <SaidLine said={said} />
    </form>
  );
}

interface PartProps {
  readonly draft: Draft;
  readonly set: (change: Partial<Draft>) => void;
}

function WhatFor({ draft, set, customers }: PartProps & { readonly customers: readonly string[] }) {
  return (
    <>
      <label>
        What for
        <select
          value={draft.purpose}
          onChange={({ target }) =>
            set({ purpose: BOOKING_PURPOSES.find((purpose) => purpose === target.value) ?? 'other' })
          }
        >
          {BOOKING_PURPOSES.map((purpose) => (
            <option key={purpose} value={purpose}>
              {PURPOSE_WORDS[purpose]}
            </option>
          ))}
        </select>
      </label>
      {draft.purpose === 'customer' ? (
        <label>
          Customer
          <input
            list="booking-customers"
            value={draft.customer}
            required
            autoComplete="off"
            onChange={({ target }) => set({ customer: target.value })}
          />
          <datalist id="booking-customers">
            {customers.map((name) => (
              <option key={name} value={name} />
            ))}
          </datalist>
        </label>
      ) : null}
      <label>
        In a few words
        <input
          value={draft.why}
          required
          maxLength={400}
          autoComplete="off"
          onChange={({ target }) => set({ why: target.value })}
        />
      </label>
    </>
  );
}

function When({ draft, set, form }: PartProps & BookProps) {
  return (
    <>
      <label>
        Leaves from
        <select value={draft.depot} onChange={({ target }) => set({ depot: target.value })}>
          {form.depots.map(({ code, name }) => (
            <option key={code} value={code}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label>
        First day
        <input
          type="date"
          required
          min={form.today}
          value={draft.startsOn}
          onChange={({ target }) => set({ startsOn: target.value })}
        />
      </label>
      <label>
        Last day
        <input
          type="date"
          required
          min={draft.startsOn}
          value={draft.lastDay}
          onChange={({ target }) => set({ lastDay: target.value })}
        />
      </label>
      <label>
        Held until, unless confirmed
        <input
          type="date"
          min={form.today}
          value={draft.heldTo}
          onChange={({ target }) => set({ heldTo: target.value })}
        />
      </label>
    </>
  );
}
