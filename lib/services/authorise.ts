/*
 * Who may do what: each use case names the roles it is open to and asks here first.
 * Invariant: a role that is not named is refused with a sentence.
 * Not here: how an actor proves who it is.
 * Read next: context.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { Context, UserRole } from './context.ts';

const MAY = {
  'read enquiries': ['desk', 'administrator'],
  'change enquiries': ['desk', 'administrator'],
  'issue quotes': ['desk', 'administrator'],
  'approve discounts': ['desk', 'administrator'],
  'read customers': ['desk', 'administrator'],
  'change customers': ['desk', 'administrator'],
  'read equipment': ['desk', 'yard', 'administrator'],
  'book equipment': ['desk', 'yard', 'administrator'],
  'record visits': ['desk', 'yard', 'administrator'],
} as const satisfies Readonly<Record<string, readonly UserRole[]>>;

export type Permission = keyof typeof MAY;

export function authorise(context: Context, permission: Permission): Result<true> {
  const roles: readonly UserRole[] = MAY[permission];
  if (roles.includes(context.actor.role)) return ok(true);
  return failed({
    code: 'not-allowed',
    sentence: `Your role (${context.actor.role}) may not ${permission}; ask ${roles.join(' or ')} to do it.`,
  });
}
