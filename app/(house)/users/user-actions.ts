'use server';
import { revalidatePath } from 'next/cache';
import { asking } from '#app/_lib/asking.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { addUser } from '#lib/services/access/add-user.ts';
import {
  changeRole,
  disableUser,
  enableUser,
  resetPassword,
  signOutEverywhere,
} from '#lib/services/access/change-user.ts';
import { type Context, USER_ROLES } from '#lib/services/context.ts';

export interface UserState {
  readonly trouble: string;
  readonly done: string;
  /** A one-time password to hand on, shown this once. */
  readonly access?: { readonly email: string; readonly password: string };
}

export async function addUserWith(_before: UserState, form: FormData): Promise<UserState> {
  const context = await asking();
  const name = String(form.get('name') ?? '');
  const added = await addUser(context, { name, email: String(form.get('email') ?? ''), role: roleOf(form) });
  if (!added.ok) return { trouble: added.reason.sentence, done: '' };
  revalidatePath('/users');
  const { email, password } = added.value;
  return { trouble: '', done: `${name.trim()} may sign in now.`, access: { email, password } };
}

/** What an administrator does to one user; the button that was pressed says what. */
export async function changeUserWith(_before: UserState, form: FormData): Promise<UserState> {
  const context = await asking();
  const userId = String(form.get('user') ?? '');
  const deed = String(form.get('deed') ?? '');
  if (deed === 'reset') return reset(context, { userId, email: String(form.get('email') ?? '') });
  const done = changed(context, { userId, deed, form });
  if (!done.ok) return { trouble: done.reason.sentence, done: '' };
  revalidatePath('/users', 'layout');
  return { trouble: '', done: 'Saved.' };
}

interface Change {
  readonly userId: string;
  readonly deed: string;
  readonly form: FormData;
}

function changed(context: Context, { userId, deed, form }: Change): Result<unknown> {
  switch (deed) {
    case 'role':
      return changeRole(context, { userId, role: roleOf(form) });
    case 'disable':
      return disableUser(context, userId);
    case 'enable':
      return enableUser(context, userId);
    case 'sign out':
      return signOutEverywhere(context, userId);
    default:
      return ok(undefined);
  }
}

async function reset(
  context: Context,
  { userId, email }: { readonly userId: string; readonly email: string },
): Promise<UserState> {
  const made = await resetPassword(context, userId);
  if (!made.ok) return { trouble: made.reason.sentence, done: '' };
  revalidatePath('/users', 'layout');
  return { trouble: '', done: 'The old password no longer works.', access: { email, password: made.value } };
}

function roleOf(form: FormData) {
  return USER_ROLES.find((role) => role === form.get('role')) ?? 'contractor';
}
