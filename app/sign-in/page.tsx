import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { asked } from '#app/_lib/asking.ts';
import { placeInside } from '#app/_lib/open-paths.ts';
import { SignInForm } from './sign-in-form.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Sign in' };

interface SignInPageProps {
  readonly searchParams: Promise<{ readonly to?: string | readonly string[] }>;
}

export default async function SignInPage({ searchParams }: SignInPageProps) {
  const to = placeInside((await searchParams).to);
  const { context } = await asked();
  if (context.actor.role !== 'signed-out') redirect(to);
  return (
    <div className="entry-page">
      <h1>Sign in</h1>
      <SignInForm to={to} />
      <p className="soft">
        Lost your password? An administrator of the house gives you a new one. The first start of the house prints the
        first administrator’s.
      </p>
    </div>
  );
}
