/*
 * A person says how figures shall be shown to them.
 * Invariant: it changes what screens show and nothing that is stored or printed.
 * Not here: what each form looks like (lib/documents/words/person-forms.ts).
 * Read next: preferences.ts.
 */
import { changeUserRow } from '#db/queries/users.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import type { Preferences } from './preferences.ts';

export function setPreferences(context: Context, wanted: Partial<Preferences>): Result<true> {
  const allowed = authorise(context, 'use an account');
  if (!allowed.ok) return allowed;
  changeUserRow(context.database.db, context.actor.id, { ...wanted, updated_at: context.now() });
  return ok(true);
}
