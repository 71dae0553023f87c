'use server';
import { redirect } from 'next/navigation';
import { signOut } from '#lib/services/access/sign-out.ts';
import { asked } from './asking.ts';
import { forgetSession } from './session-cookie.ts';

export async function signOutHere(): Promise<void> {
  const { asker, context } = await asked();
  signOut(context, { sessionId: asker.sessionId });
  await forgetSession();
  redirect('/sign-in');
}
