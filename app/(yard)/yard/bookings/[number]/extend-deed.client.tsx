'use client';

import { useState } from 'react';
import { useForms } from '#app/_ui/shown-forms.client.tsx';
import { moneyIn } from '#lib/documents/words/person-forms.ts';
import { addDays, isIsoDate } from '#lib/kernel/date-range.ts';
import type { Extended } from '#lib/services/yard/extend-booking.ts';
import type { DeedProps } from './deed-props.ts';
import { DeedField, UnitTicks } from './unit-ticks.client.tsx';

/** A later last day: first what it means for the money and for others, then the press that does it. */
export function ExtendDeed({ view, busy, act }: DeedProps) {
  const forms = useForms();
  const serials = view.units.flatMap(({ serial, state }) =>
    ['held', 'allocated', 'picked', 'out'].includes(state) ? [serial] : [],
  );
  const [lastDay, setLastDay] = useState(view.endsBefore ?? view.today);
  const [askedBy, setAskedBy] = useState('');
  const [why, setWhy] = useState('');
  const [chosen, setChosen] = useState<readonly string[]>(serials);
  const endsBefore = isIsoDate(lastDay) ? addDays(lastDay, 1) : lastDay;
  const body = { deed: 'extend', endsBefore, askedBy, why, serials: chosen.length === serials.length ? [] : chosen };
  const told = ({ hire, moved }: Extended): string => {
    const money = (minor: number) =>
      moneyIn({ amount_minor: minor, currency: hire?.currency ?? '', mark: forms.decimals });
    const cost =
      hire === null ? '' : ` The hire comes to ${money(hire.after_minor)}, before it was ${money(hire.before_minor)}.`;
    const others = moved
      .map(({ booking, serial, instead }) => ` ${booking} gets ${instead} instead of ${serial}.`)
      .join('');
    return `${cost}${others}`;
  };
  return (
    <details>
      <summary>Extend</summary>
      <div className="fields">
        <DeedField id="extend-to" label="New last day of hire" type="date" value={lastDay} onChange={setLastDay} />
        <DeedField id="extend-by" label="Asked for by" value={askedBy} onChange={setAskedBy} />
        <DeedField id="extend-why" label="Why" value={why} onChange={setWhy} />
      </div>
      <UnitTicks legend="Units that stay longer" serials={serials} chosen={chosen} onChange={setChosen} />
      <p className="tools">
        <button
          type="button"
          disabled={busy || chosen.length === 0}
          onClick={() =>
            void act<Extended>({
              body: { ...body, trial: true },
              done: (answer) => ({
                tone: 'warning',
                words: `Nothing is changed yet. It can be extended.${told(answer)}`,
              }),
            })
          }
        >
          See what it means
        </button>
        <button
          type="button"
          className="main"
          disabled={busy || chosen.length === 0}
          onClick={() =>
            void act<Extended>({ body, done: (answer) => ({ tone: 'good', words: `Extended.${told(answer)}` }) })
          }
        >
          Extend
        </button>
      </p>
    </details>
  );
}
