import { signOutHere } from '#app/_lib/sign-out-action.ts';

interface AccountMenuProps {
  readonly name: string;
  readonly role: string;
}

/** Who is signed in; opens without a script. */
export function AccountMenu({ name, role }: AccountMenuProps) {
  return (
    <details className="account-menu">
      <summary>{name}</summary>
      <div>
        <small>{role === 'one-time' ? 'with a one-time password' : role}</small>
        <a href="/account">My account</a>
        {role === 'administrator' && <a href="/users">Users</a>}
        {role === 'administrator' && <a href="/history">History</a>}
        <form action={signOutHere}>
          <button type="submit">Sign out</button>
        </form>
      </div>
    </details>
  );
}
