'use client';

import type { UserState } from './user-actions.ts';

/** What came of it; a one-time password stands here until the page is left, and nowhere afterwards. */
export function UserSaid({ state }: { readonly state: UserState }) {
  return (
    <div aria-live="polite">
      {state.trouble !== '' && <p className="notice refusal">{state.trouble}</p>}
      {state.access !== undefined && (
        <div className="notice good">
          <p>{state.done} Hand this on now; it is not shown again and must be replaced at the first sign-in.</p>
          <dl>
            <dt>Email</dt>
            <dd>{state.access.email}</dd>
            <dt>One-time password</dt>
            <dd>
              <code className="one-time">{state.access.password}</code>
            </dd>
          </dl>
        </div>
      )}
      {state.access === undefined && state.done !== '' && <p className="notice good">{state.done}</p>}
    </div>
  );
}
