/*
 * What every use case gets: the database, the clock and who is asking.
 * Invariant: a use case never reaches for a clock, an environment variable or a database of its own.
 * Not here: signing in (sign-in.ts) and finding out who asks (who-asks.ts).
 * Read next: open-house.ts, authorise.ts.
 */
import type { OpenDatabase } from '#db/client.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';

export const USER_ROLES = ['desk', 'yard', 'administrator', 'contractor'] as const;
export type UserRole = (typeof USER_ROLES)[number];

/** `signed-out`: nobody has signed in. `one-time`: signed in with a password that must be replaced first. */
export type ActorRole = UserRole | 'signed-out' | 'one-time';

export interface Actor {
  /** The user's id; `system` for the house itself, `nobody` for the signed-out. */
  readonly id: string;
  readonly name: string;
  readonly role: ActorRole;
}

/** The house itself: its first start, the command line. */
export const HOUSE_ITSELF: Actor = { id: 'system', name: 'Kitwright', role: 'administrator' };
/** Whoever can start programs on this machine works at the Desk. */
export const COMMAND_LINE: Actor = { id: 'system', name: 'Command line', role: 'desk' };
export const NOBODY: Actor = { id: 'nobody', name: 'Nobody', role: 'signed-out' };

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
