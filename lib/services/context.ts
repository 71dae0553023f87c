/*
 * What every use case gets: the database, the clock and who is asking.
 * Invariant: a use case never reaches for a clock, an environment variable or a database of its own.
 * Not here: signing in; the house runs for one trusted desk on this machine until accounts exist.
 * Read next: open-house.ts, authorise.ts.
 */
import type { OpenDatabase } from '#db/client.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';

export const USER_ROLES = ['desk', 'yard', 'administrator', 'contractor'] as const;
export type UserRole = (typeof USER_ROLES)[number];

export interface Actor {
  readonly name: string;
  readonly role: UserRole;
}

export interface Context {
  readonly database: OpenDatabase;
  readonly now: () => Date;
  readonly actor: Actor;
  /** The browser window that asks, so that it knows its own changes again; absent where none does. */
  readonly screen?: string;
}

export function timestamp(context: Context): string {
  return context.now().toISOString();
}

export function today(context: Context): IsoDate {
  return timestamp(context).slice(0, 10);
}

/** The clock in milliseconds, for working in turns. */
export function milliseconds(context: Context): number {
  return context.now().getTime();
}
