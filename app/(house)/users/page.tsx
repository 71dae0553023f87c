import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import { listHouseUsers } from '#lib/services/access/list-users.ts';
import { USER_ROLES } from '#lib/services/context.ts';
import { AddUser } from './add-user.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Users' };

export default async function UsersPage() {
  const users = listHouseUsers(await asking());
  if (!users.ok) return <p className="notice refusal">{users.reason.sentence}</p>;
  return (
    <>
      <div className="heading">
        <h1>Users</h1>
        <Link href="/history">Who did what in the house</Link>
      </div>
      <div className="wide">
        <table>
          <thead>
            <tr>
              <th>Name</th>
              <th className="wide-only">Email</th>
              <th>Role</th>
              <th>Standing</th>
              <th className="number wide-only">Sessions</th>
              <th className="wide-only">Last sign-in</th>
            </tr>
          </thead>
          <tbody>
            {users.value.map((user) => (
              <tr key={user.id}>
                <td>
                  <Link href={`/users/${user.id}`}>{user.name}</Link>
                  <small className="narrow-only">{user.email}</small>
                </td>
                <td className="wide-only">{user.email}</td>
                <td>{user.role}</td>
                <td>{user.standing}</td>
                <td className="number wide-only">{user.sessions}</td>
                <td className="wide-only">
                  {user.lastSignIn === undefined ? 'not signed in' : <ShownMoment at={user.lastSignIn} />}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <AddUser roles={USER_ROLES} />
    </>
  );
}
