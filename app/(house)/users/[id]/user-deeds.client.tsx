'use client';

import { useActionState } from 'react';
import { changeUserWith, type UserState } from '../user-actions.ts';
import { UserSaid } from '../user-said.client.tsx';

interface UserDeedsProps {
  readonly user: { readonly id: string; readonly email: string; readonly role: string; readonly standing: string };
  readonly roles: readonly string[];
}

const NOTHING: UserState = { trouble: '', done: '' };

/** Everything an administrator may do to a user; each button says what it does and what it ends. */
export function UserDeeds({ user, roles }: UserDeedsProps) {
  const [state, action, isPending] = useActionState(changeUserWith, NOTHING);
  const isDisabled = user.standing === 'disabled';
  return (
    <form action={action} className="panel">
      <UserSaid state={state} />
      <input type="hidden" name="user" value={user.id} />
      <input type="hidden" name="email" value={user.email} />
      <div className="tools">
        <div>
          <label htmlFor="role">Role</label>
          <select id="role" name="role" defaultValue={user.role} key={user.role}>
            {roles.map((role) => (
              <option key={role}>{role}</option>
            ))}
          </select>
        </div>
        <button type="submit" name="deed" value="role" disabled={isPending}>
          Save the role
        </button>
      </div>
      <ul className="deeds">
        <li>
          <button type="submit" name="deed" value="reset" disabled={isPending}>
            New one-time password
          </button>
          <small>For a lost password: the old one stops working and every session ends.</small>
        </li>
        <li>
          <button type="submit" name="deed" value="sign out" disabled={isPending}>
            Sign out everywhere
          </button>
          <small>For a lost or shared machine: every session ends, the password stays.</small>
        </li>
        <li>
          <button type="submit" name="deed" value={isDisabled ? 'enable' : 'disable'} disabled={isPending}>
            {isDisabled ? 'Enable again' : 'Disable'}
          </button>
          <small>
            {isDisabled
              ? 'They may sign in again with the password they had.'
              : 'For somebody who left: out at once, and nothing they did is lost.'}
          </small>
        </li>
      </ul>
    </form>
  );
}
