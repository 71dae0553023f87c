/*
 * Holds back whoever asks too much without an account: by the address that asks, by link, and in all.
 * Invariant: counted in the database before the work is done, so that a restart forgets nothing.
 * Not here: signing in (../access/throttle.ts), whose window this shares.
 * Read next: open-link.ts.
 */
import { addTry, triesSince } from '#db/queries/sign-in-tries.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';

const WINDOW_MS = 15 * 60_000;

/** Most in a quarter of an hour. House practice, no source: room for a person at work, none for a machine. */
export const TURNS = {
  'start an order': { most: 12 },
  'start orders, all': { most: 300 },
  'start without a proof': { most: 6 },
  'open a wrong link': { most: 20 },
  'use a wrong key': { most: 20 },
  'work on an order': { most: 400 },
  'work an order out': { most: 60 },
  'send a file': { most: 60 },
  'ask by key': { most: 600 },
} as const;
export type Turn = keyof typeof TURNS;

/** Counts one turn of somebody (an address, a link, a key), or says how long to wait. */
export function takeTurn(context: Context, { turn, who }: { readonly turn: Turn; readonly who: string }): Result<true> {
  const now = context.now();
  const since = new Date(now.getTime() - WINDOW_MS).toISOString();
  const key = `${turn} ${who}`;
  return context.database.db.transaction(
    (tx): Result<true> => {
      const waiting = tooMany({ tries: triesSince(tx, { key, since }), turn, now });
      if (waiting !== null) return waiting;
      addTry(tx, { key, at: now.toISOString() });
      return ok(true);
    },
    { behavior: 'immediate' },
  );
}

/** Whether somebody has used up their turns already; counts none. */
export function mayTurn(context: Context, { turn, who }: { readonly turn: Turn; readonly who: string }): Result<true> {
  const now = context.now();
  const since = new Date(now.getTime() - WINDOW_MS).toISOString();
  const tries = triesSince(context.database.db, { key: `${turn} ${who}`, since });
  return tooMany({ tries, turn, now }) ?? ok(true);
}

interface Tried {
  readonly tries: readonly string[];
  readonly turn: Turn;
  readonly now: Date;
}

function tooMany({ tries, turn, now }: Tried): Result<never> | null {
  const oldest = tries.at(-TURNS[turn].most);
  if (oldest === undefined) return null;
  const seconds = Math.max(1, Math.ceil((Date.parse(oldest) + WINDOW_MS - now.getTime()) / 1000));
  const minutes = Math.ceil(seconds / 60);
  return failed({
    code: 'too-many-tries',
    retry_after_s: seconds,
    sentence: `That was asked too often. Wait ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}, then try again.`,
  });
}
