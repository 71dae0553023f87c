'use server';
import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { asked } from '#app/_lib/asking.ts';
import { placeInside } from '#app/_lib/open-paths.ts';
import { addressAsking, keepSession } from '#app/_lib/session-cookie.ts';
import { signIn } from '#lib/services/access/sign-in.ts';

export interface SignInState {
  readonly email: string;
  readonly trouble: string;
}

export async function signInWith(_before: SignInState, form: FormData): Promise<SignInState> {
  const email = String(form.get('email') ?? '');
  const { context } = await asked();
  const cookie = await signIn(context, {
    email,
    password: String(form.get('password') ?? ''),
    address: await addressAsking(),
    browser: (await headers()).get('user-agent') ?? '',
  });
  if (!cookie.ok) return { email, trouble: cookie.reason.sentence };
  await keepSession(cookie.value);
  redirect(placeInside(form.get('to')));
}
