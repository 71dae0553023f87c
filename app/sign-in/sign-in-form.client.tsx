'use client';

import { useActionState } from 'react';
import { type SignInState, signInWith } from './sign-in-action.ts';

export function SignInForm({ to }: { readonly to: string }) {
  const start: SignInState = { email: '', trouble: '' };
  const [state, action, isPending] = useActionState(signInWith, start);
  return (
    <form action={action} className="panel entry">
      {state.trouble !== '' && (
        <p className="notice refusal" role="alert">
          {state.trouble}
        </p>
      )}
      <input type="hidden" name="to" value={to} />
      <div>
        <label htmlFor="email">Email</label>
        <input id="email" name="email" type="email" autoComplete="username" required defaultValue={state.email} />
      </div>
      <div>
        <label htmlFor="password">Password</label>
        <input id="password" name="password" type="password" autoComplete="current-password" required maxLength={128} />
      </div>
      <button className="main" type="submit" disabled={isPending}>
        {isPending ? 'Signing in…' : 'Sign in'}
      </button>
    </form>
  );
}
