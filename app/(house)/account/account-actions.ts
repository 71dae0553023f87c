'use server';
import { revalidatePath } from 'next/cache';
import { askedBySomeone } from '#app/_lib/asking.ts';
import { DATE_FORMS, DECIMAL_MARKS } from '#lib/documents/words/person-forms.ts';
import type { Result } from '#lib/kernel/result.ts';
import { endOwnSessions, renameSelf } from '#lib/services/access/change-account.ts';
import { setPreferences } from '#lib/services/access/set-preferences.ts';

export interface AccountState {
  readonly trouble: string;
  readonly done: string;
}

export async function renameWith(_before: AccountState, form: FormData): Promise<AccountState> {
  const { context } = await askedBySomeone();
  return said(renameSelf(context, { name: String(form.get('name') ?? '') }), 'The name is saved.');
}

export async function preferWith(_before: AccountState, form: FormData): Promise<AccountState> {
  const { context } = await askedBySomeone();
  const chosen = setPreferences(context, {
    units: form.get('units') === 'us' ? 'us' : 'si',
    date_form: DATE_FORMS.find((known) => known === form.get('dates')) ?? 'written',
    decimal_mark: DECIMAL_MARKS.find((known) => known === form.get('decimals')) ?? 'point',
  });
  return said(chosen, 'Saved; every screen shows it from now on.');
}

/** Ends one session, or all but this one. */
export async function endSessionsWith(form: FormData): Promise<void> {
  const { asker, context } = await askedBySomeone();
  const only = form.get('session');
  endOwnSessions(context, typeof only === 'string' ? { only } : { except: asker.sessionId });
  revalidatePath('/account');
}

function said(result: Result<unknown>, done: string): AccountState {
  if (!result.ok) return { trouble: result.reason.sentence, done: '' };
  revalidatePath('/', 'layout');
  return { trouble: '', done };
}
