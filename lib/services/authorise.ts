/*
 * Who may do what: each use case names the roles it is open to and asks here first.
 * Invariant: a role that is not named is refused with a sentence.
 * Not here: how an actor proves who it is (sign-in.ts, who-asks.ts).
 * Read next: context.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type ActorRole, type Context, USER_ROLES } from './context.ts';

const MAY = {
  'read help': ['desk', 'yard', 'administrator', 'contractor'],
  'read enquiries': ['desk', 'administrator'],
  'change enquiries': ['desk', 'administrator'],
  'issue quotes': ['desk', 'administrator'],
  'approve discounts': ['desk', 'administrator'],
  'read customers': ['desk', 'administrator'],
  'change customers': ['desk', 'administrator'],
  'read equipment': ['desk', 'yard', 'administrator'],
  'read rules': ['desk', 'yard', 'administrator'],
  'change equipment': ['administrator'],
  'change the house': ['administrator'],
  'book equipment': ['desk', 'yard', 'administrator'],
  'read the yard': ['desk', 'yard', 'administrator'],
  'change stock': ['yard', 'administrator'],
  'send equipment out': ['desk', 'yard', 'administrator'],
  'take equipment back': ['desk', 'yard', 'administrator'],
  'do work orders': ['yard', 'administrator'],
  'decide charges': ['desk', 'administrator'],
  'record visits': ['desk', 'yard', 'administrator'],
  'manage users': ['administrator'],
  'read the history of the house': ['administrator'],
  'use an account': USER_ROLES,
  'choose a password': [...USER_ROLES, 'one-time'],
  'use self-service': [...USER_ROLES, 'one-time', 'signed-out'],
  'sign in': [...USER_ROLES, 'one-time', 'signed-out'],
} as const satisfies Readonly<Record<string, readonly ActorRole[]>>;

export type Permission = keyof typeof MAY;

export function authorise(context: Context, permission: Permission): Result<true> {
  const roles: readonly ActorRole[] = MAY[permission];
  const { role } = context.actor;
  if (roles.includes(role)) return ok(true);
  if (role === 'signed-out') return failed({ code: 'not-signed-in', sentence: 'Sign in first.' });
  if (role === 'one-time') {
    return failed({
      code: 'password-to-choose',
      sentence: 'Choose a password of your own first; the one you signed in with holds only once.',
    });
  }
  return failed({
    code: 'not-allowed',
    sentence: `Your role (${role}) may not ${permission}; ask ${roles.join(' or ')} to do it.`,
  });
}
