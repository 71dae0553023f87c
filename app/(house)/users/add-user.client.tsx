'use client';

import { useActionState } from 'react';
import { addUserWith, type UserState } from './user-actions.ts';
import { UserSaid } from './user-said.client.tsx';

const NOTHING: UserState = { trouble: '', done: '' };

export function AddUser({ roles }: { readonly roles: readonly string[] }) {
  const [state, action, isPending] = useActionState(addUserWith, NOTHING);
  return (
    <form action={action} className="panel" aria-labelledby="add-user">
      <h2 id="add-user">Let somebody in</h2>
      <UserSaid state={state} />
      <div className="fields">
        <div>
          <label htmlFor="new-name">Name</label>
          <input id="new-name" name="name" required maxLength={120} autoComplete="off" />
        </div>
        <div>
          <label htmlFor="new-email">Email</label>
          <input id="new-email" name="email" type="email" required autoComplete="off" />
        </div>
        <div>
          <label htmlFor="new-role">Role</label>
          <select id="new-role" name="role">
            {roles.map((role) => (
              <option key={role}>{role}</option>
            ))}
          </select>
        </div>
      </div>
      <p className="tools">
        <button className="main" type="submit" disabled={isPending}>
          {isPending ? 'Adding…' : 'Add with a one-time password'}
        </button>
      </p>
    </form>
  );
}
