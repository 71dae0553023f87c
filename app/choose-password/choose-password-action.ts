'use server';
import { redirect } from 'next/navigation';
import { asked } from '#app/_lib/asking.ts';
import { placeInside } from '#app/_lib/open-paths.ts';
import { choosePassword } from '#lib/services/access/choose-password.ts';

export interface PasswordState {
  readonly trouble: string;
  readonly done: string;
}

/** Replaces the password of whoever asks; then goes on to a place, where one was wanted. */
export async function choosePasswordWith(_before: PasswordState, form: FormData): Promise<PasswordState> {
  const next = String(form.get('next') ?? '');
  if (next !== String(form.get('again') ?? ''))
    return { trouble: 'The two new passwords differ; type the new one twice.', done: '' };
  const { asker, context } = await asked();
  const chosen = await choosePassword(context, {
    present: String(form.get('present') ?? ''),
    next,
    sessionId: asker.sessionId,
  });
  if (!chosen.ok) return { trouble: chosen.reason.sentence, done: '' };
  const to = form.get('to');
  if (to !== null) redirect(placeInside(to));
  return { trouble: '', done: 'The password is changed. Your other sessions have ended.' };
}
