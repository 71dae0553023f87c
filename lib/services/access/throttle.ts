/*
 * Holds back whoever tries to sign in too often: by account, and by the address that asks.
 * Invariant: counted in the database, so that a restart forgets nothing; a try counts before its password is looked at.
 * Not here: the sign-in itself (sign-in.ts).
 * Read next: sign-in.ts.
 */
import { addTry, forgetTries, forgetTriesUntil, forgetTry, triesSince } from '#db/queries/sign-in-tries.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';

/** Common practice, no source: room for a forgotten password, none for guessing. */
export const TRIES = { account: 5, address: 30, window_minutes: 15 } as const;
const MINUTE_MS = 60_000;

interface Asked {
  readonly account: string;
  readonly address: string;
}

/** Counts one try, or says how long to wait. Answers the moment under which the try was written. */
export function takeTry(context: Context, asked: Asked): Result<string> {
  const now = context.now();
  const since = new Date(now.getTime() - TRIES.window_minutes * MINUTE_MS).toISOString();
  const at = now.toISOString();
  return context.database.db.transaction(
    (tx) => {
      forgetTriesUntil(tx, since);
      for (const { key, most } of keysOf(asked)) {
        const tries = triesSince(tx, { key, since });
        const oldest = tries.at(-most);
        if (oldest !== undefined)
          return mustWait({ until: Date.parse(oldest) + TRIES.window_minutes * MINUTE_MS, now });
      }
      for (const { key } of keysOf(asked)) addTry(tx, { key, at });
      return ok(at);
    },
    { behavior: 'immediate' },
  );
}

/** After success: the account starts afresh, the address gets its one try back. */
export function succeeded(context: Context, { account, address, at }: Asked & { readonly at: string }): void {
  const [byAccount, byAddress] = keysOf({ account, address });
  context.database.db.transaction((tx) => {
    forgetTries(tx, byAccount.key);
    forgetTry(tx, { key: byAddress.key, at });
  });
}

function keysOf({ account, address }: Asked) {
  return [
    { key: `account ${account.toLowerCase()}`, most: TRIES.account },
    { key: `address ${address}`, most: TRIES.address },
  ] as const;
}

function mustWait({ until, now }: { readonly until: number; readonly now: Date }): Result<never> {
  const minutes = Math.max(1, Math.ceil((until - now.getTime()) / MINUTE_MS));
  return failed({
    code: 'too-many-tries',
    sentence: `Too many tries to sign in. Wait ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}, then try again; an administrator can give you a new password.`,
  });
}
