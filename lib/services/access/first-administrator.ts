/*
 * The first start makes one administrator, with a password that holds once.
 * Invariant: where there is any user, nothing is made; the password is answered and never kept in clear.
 * Not here: printing it (lib/launch).
 * Read next: passwords.ts, add-user.ts.
 */
import { type OpenDatabase, openDatabase } from '#db/client.ts';
import { listUsers } from '#db/queries/users.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { type Context, HOUSE_ITSELF } from '#lib/services/context.ts';
import { addUser } from './add-user.ts';

export interface OneTimeAccess {
  readonly email: string;
  readonly password: string;
}

interface FirstStart {
  readonly databasePath: string;
  readonly email: string;
}

export async function firstAdministrator({ databasePath, email }: FirstStart): Promise<OneTimeAccess | undefined> {
  const database = openDatabase(databasePath);
  try {
    return await makeFirst(database, email);
  } finally {
    database.raw.close();
  }
}

async function makeFirst(database: OpenDatabase, email: string): Promise<OneTimeAccess | undefined> {
  if (listUsers(database.db).length > 0) return undefined;
  const context: Context = { database, now: () => new Date(), actor: HOUSE_ITSELF };
  const added = await addUser(context, { name: 'Administrator', email, role: 'administrator' });
  invariant(added.ok, added.ok ? '' : added.reason.sentence);
  return { email: added.value.email, password: added.value.password };
}
