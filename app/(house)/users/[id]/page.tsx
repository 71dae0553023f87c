import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { SessionTable } from '#app/_ui/session-table.tsx';
import { openUser } from '#lib/services/access/list-users.ts';
import { USER_ROLES } from '#lib/services/context.ts';
import { UserDeeds } from './user-deeds.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'User' };

export default async function UserPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const opened = openUser(await asking(), (await params).id);
  if (!opened.ok && opened.reason.code === 'no-such-user') notFound();
  if (!opened.ok) return <p className="notice refusal">{opened.reason.sentence}</p>;
  const { user, sessions } = opened.value;
  return (
    <>
      <div className="heading">
        <h1>{user.name}</h1>
        <small>
          {user.email} · {user.role} · {user.standing} · <Link href={`/history?who=${user.id}`}>what they did</Link>
        </small>
      </div>
      <UserDeeds user={user} roles={USER_ROLES} />
      <h2>Sessions</h2>
      <SessionTable sessions={sessions} />
      <p>
        <Link href="/users">To all users</Link>
      </p>
    </>
  );
}
