'use client';

import { useActionState } from 'react';
import { choosePasswordWith, type PasswordState } from './choose-password-action.ts';

const FIELDS = [
  { name: 'present', label: 'Present password', complete: 'current-password' },
  { name: 'next', label: 'New password', complete: 'new-password' },
  { name: 'again', label: 'New password again', complete: 'new-password' },
] as const;

/** `to` is where to go on to; without it the form stays and says that it is done. */
export function PasswordForm({ to }: { readonly to?: string }) {
  const start: PasswordState = { trouble: '', done: '' };
  const [state, action, isPending] = useActionState(choosePasswordWith, start);
  return (
    <form action={action} className="panel entry">
      {state.trouble !== '' && (
        <p className="notice refusal" role="alert">
          {state.trouble}
        </p>
      )}
      {to !== undefined && <input type="hidden" name="to" value={to} />}
      {FIELDS.map(({ name, label, complete }) => (
        <div key={name}>
          <label htmlFor={name}>{label}</label>
          <input id={name} name={name} type="password" autoComplete={complete} required maxLength={128} />
        </div>
      ))}
      <p className="soft">At least 12 characters, not your email. A few words in a row are easy to remember.</p>
      <p className="tools">
        <button className="main" type="submit" disabled={isPending}>
          {isPending ? 'Saving…' : 'Save the new password'}
        </button>
        <span aria-live="polite">{state.done}</span>
      </p>
    </form>
  );
}
