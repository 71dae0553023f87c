'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { ROLE_NAMES } from '#app/_ui/plan/plan-words.ts';
import { ShownDate, ShownMoney } from '#app/_ui/shown-forms.client.tsx';
import { decimalText } from '#lib/money/currency.ts';
import type { RaisedModel } from '#lib/services/equipment/raise-rates.ts';
import styles from './equipment.module.css';
import { minorOf } from './minor-of.ts';
import { RateHeads } from './rate-heads.tsx';

interface Asked {
  readonly role?: string;
  readonly percent: number;
  readonly step_minor: number;
  readonly starts_on: string;
}

const STEP_MINOR = 50;

/** Some per cent on all rates of a role from a day, rounded to a step: shown first, then put on as shown. */
export function RaiseRates({ currency }: { readonly currency: string }) {
  const router = useRouter();
  const [asked, setAsked] = useState<Asked | null>(null);
  const [shown, setShown] = useState<readonly RaisedModel[]>([]);
  const [said, setSaid] = useState({ sentence: '', kind: 'good' });
  const look = async (form: FormData) => {
    const role = String(form.get('role') ?? '');
    const step_minor = minorOf(String(form.get('step') ?? ''), currency);
    if (step_minor === null || step_minor < 1) {
      setSaid({
        sentence: `Write the step in ${currency}, for example ${decimalText(STEP_MINOR, currency)}.`,
        kind: 'refusal',
      });
      return;
    }
    const body = {
      percent: Number(form.get('percent')),
      step_minor,
      starts_on: String(form.get('from') ?? ''),
      ...(role === '' ? {} : { role }),
    };
    const sent = await send<readonly RaisedModel[]>({ method: 'POST', path: '/api/v1/rates/raise', body });
    setAsked(sent.ok ? body : null);
    setShown(sent.ok ? sent.value : []);
    setSaid({ sentence: sent.ok ? '' : sent.sentence, kind: 'refusal' });
  };
  const take = async () => {
    const sent = await send<{ readonly put: number }>({
      method: 'POST',
      path: '/api/v1/rates/raise',
      body: { ...asked, take: true },
    });
    setSaid(
      sent.ok
        ? { sentence: `${sent.value.put} cards were put on.`, kind: 'good' }
        : { sentence: sent.sentence, kind: 'refusal' },
    );
    if (!sent.ok) return;
    setAsked(null);
    router.refresh();
  };
  return (
    <>
      <RaiseForm currency={currency} onLook={look} />
      <p role="status" className={said.sentence === '' ? '' : `notice ${said.kind}`}>
        {said.sentence}
      </p>
      {asked === null ? null : (
        <>
          <Raised shown={shown} currency={currency} />
          <div className={styles.bar}>
            <button type="button" className="main" onClick={take}>
              Put {shown.length} cards on from <ShownDate on={asked.starts_on} />
            </button>
          </div>
        </>
      )}
    </>
  );
}

interface RaiseFormProps {
  readonly currency: string;
  readonly onLook: (form: FormData) => Promise<void>;
}

function RaiseForm({ currency, onLook }: RaiseFormProps) {
  return (
    <form action={onLook} className="tools">
      <div>
        <label htmlFor="raise-role">Role</label>
        <select id="raise-role" name="role">
          <option value="">All roles</option>
          {Object.entries(ROLE_NAMES).map(([role, name]) => (
            <option key={role} value={role}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor="raise-percent">Per cent</label>
        <input
          id="raise-percent"
          name="percent"
          type="number"
          step="0.1"
          min={-50}
          max={200}
          defaultValue={3}
          className={styles.narrow}
        />
      </div>
      <div>
        <label htmlFor="raise-step">Rounded to, {currency}</label>
        <input
          id="raise-step"
          name="step"
          inputMode="decimal"
          defaultValue={decimalText(STEP_MINOR, currency)}
          className={styles.narrow}
        />
      </div>
      <div>
        <label htmlFor="raise-from">From</label>
        <input id="raise-from" name="from" type="date" required />
      </div>
      <button type="submit">Show what it comes to</button>
    </form>
  );
}

interface RaisedProps {
  readonly shown: readonly RaisedModel[];
  readonly currency: string;
}

function Raised({ shown, currency }: RaisedProps) {
  return (
    <div className="wide">
      <table>
        <thead>
          <tr>
            <th scope="col">Model</th>
            <RateHeads currency={currency} />
          </tr>
        </thead>
        <tbody>
          {shown.map((model) => (
            <tr key={model.number}>
              <th scope="row">
                {model.number} <span className={styles.name}>{model.name}</span>
              </th>
              {(['day_minor', 'week_minor', 'four_weeks_minor'] as const).map((rate) => (
                <td key={rate} className="number">
                  <span className={styles.gone}>
                    <ShownMoney minor={model.before[rate]} currency={currency} />
                  </span>{' '}
                  <ShownMoney minor={model.after[rate]} currency={currency} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
