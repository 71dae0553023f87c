import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { asked } from '#app/_lib/asking.ts';
import { placeInside } from '#app/_lib/open-paths.ts';
import { PasswordForm } from './password-form.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Choose a password' };

interface ChoosePasswordPageProps {
  readonly searchParams: Promise<{ readonly to?: string | readonly string[] }>;
}

/** Where a one-time password leads: nothing else opens before it is replaced. */
export default async function ChoosePasswordPage({ searchParams }: ChoosePasswordPageProps) {
  const to = placeInside((await searchParams).to);
  const { role } = (await asked()).context.actor;
  if (role === 'signed-out') redirect('/sign-in');
  return (
    <div className="entry-page">
      <h1>Choose a password</h1>
      {role === 'one-time' && <p>The password that you were given holds only once. Choose one of your own to go on.</p>}
      <PasswordForm to={to} />
    </div>
  );
}
