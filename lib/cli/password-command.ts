/*
 * `password`: a new one-time password for a user, for a house whose last administrator has lost theirs.
 * Invariant: printed once; the old password and every session of the user end, and the log says so.
 * Not here: resetting on the screen, which is the usual way (services/access/change-user.ts).
 * Read next: ../services/access/change-user.ts.
 */
import { resetPassword } from '#lib/services/access/change-user.ts';
import { listHouseUsers } from '#lib/services/access/list-users.ts';
import { HOUSE_ITSELF } from '#lib/services/context.ts';
import type { Options } from './arguments.ts';
import { openPreparedHouse } from './read-input.ts';

export async function passwordCommand(options: Options): Promise<number> {
  const context = { ...(await openPreparedHouse()), actor: HOUSE_ITSELF };
  const users = listHouseUsers(context);
  const email = options.list.trim().toLowerCase();
  const user = users.ok ? users.value.find((one) => one.email === email) : undefined;
  if (user === undefined) {
    process.stderr.write(`No user of this house has the email “${email}”.\n`);
    return 2;
  }
  const password = await resetPassword(context, user.id);
  if (!password.ok) {
    process.stderr.write(`${password.reason.sentence}\n`);
    return 2;
  }
  process.stdout.write(
    `${user.email} signs in with ${password.value} once and chooses a password of their own then.\n`,
  );
  return 0;
}
