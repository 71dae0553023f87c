'use client';

import { useActionState } from 'react';
import { type AccountState, preferWith, renameWith } from './account-actions.ts';

const NOTHING: AccountState = { trouble: '', done: '' };

function Said({ state }: { readonly state: AccountState }) {
  return (
    <div aria-live="polite">
      {state.trouble !== '' && <p className="notice refusal">{state.trouble}</p>}
      {state.done !== '' && <p className="notice good">{state.done}</p>}
    </div>
  );
}

export function NameForm({ name }: { readonly name: string }) {
  const [state, action, isPending] = useActionState(renameWith, NOTHING);
  return (
    <form action={action}>
      <Said state={state} />
      <div className="tools">
        <div>
          <label htmlFor="name">Name</label>
          <input id="name" name="name" defaultValue={name} key={name} required maxLength={120} autoComplete="name" />
        </div>
        <button type="submit" disabled={isPending}>
          Save the name
        </button>
      </div>
      <small>It stands beside everything you do from now on; what you did before keeps the name you had.</small>
    </form>
  );
}

const CHOICES = [
  { name: 'units', label: 'Units', options: { si: 'SI (N·m, mm, bar)', us: 'US customary (lbf·ft, in, psi)' } },
  {
    name: 'dates',
    label: 'Dates',
    options: {
      written: '2 March 2026',
      iso: '2026-03-02 (ISO 8601)',
      'day-month-year': '02.03.2026 (day first)',
      'month-day-year': '03/02/2026 (month first)',
    },
  },
  { name: 'decimals', label: 'Decimal mark', options: { point: '12 345.60', comma: '12 345,60' } },
] as const;

interface PreferencesFormProps {
  readonly chosen: Readonly<Record<'units' | 'dates' | 'decimals', string>>;
}

export function PreferencesForm({ chosen }: PreferencesFormProps) {
  const [state, action, isPending] = useActionState(preferWith, NOTHING);
  return (
    <form action={action}>
      <Said state={state} />
      <div className="fields">
        {CHOICES.map(({ name, label, options }) => (
          <div key={name}>
            <label htmlFor={name}>{label}</label>
            <select id={name} name={name} defaultValue={chosen[name]} key={chosen[name]}>
              {Object.entries(options).map(([value, text]) => (
                <option key={value} value={value}>
                  {text}
                </option>
              ))}
            </select>
          </div>
        ))}
      </div>
      <p className="tools">
        <button className="main" type="submit" disabled={isPending}>
          Save how figures are shown
        </button>
      </p>
      <small>Screens follow this at once. Papers keep the form that was chosen for them.</small>
    </form>
  );
}
