import { findUserByEmail } from '#db/queries/users.ts';
import { addUser } from '#lib/services/access/add-user.ts';
import { choosePassword } from '#lib/services/access/choose-password.ts';
import { type Context, HOUSE_ITSELF, type UserRole } from '#lib/services/context.ts';
import { granted } from '../granted.ts';
import { PEOPLE } from './people.ts';

/** Adds a person who has already replaced their one-time password; answers the id. Nothing happens where they are there. */
export async function addPerson(
  context: Context,
  { role, password }: { readonly role: UserRole; readonly password: string },
): Promise<string> {
  const there = findUserByEmail(context.database.db, PEOPLE[role].email);
  if (there !== undefined) return there.id;
  const added = granted(await addUser({ ...context, actor: HOUSE_ITSELF }, PEOPLE[role]));
  const own: Context = { ...context, actor: { id: added.id, name: PEOPLE[role].name, role: 'one-time' } };
  granted(await choosePassword(own, { present: added.password, next: password, sessionId: 'none' }));
  return added.id;
}
