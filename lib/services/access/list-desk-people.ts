/*
 * The people of the Desk who may be given an enquiry.
 * Invariant: the one who asks is among them; whoever has work already stays on the list.
 * Not here: accounts and roles (list-users.ts).
 * Read next: ../enquiries/change-enquiry-life.ts.
 */
import { peopleWithWork } from '#db/queries/enquiries.ts';
import { listUsers } from '#db/queries/users.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { type ActingPerson, actingPerson } from './acting-person.ts';

export function listDeskPeople(context: Context): Result<readonly ActingPerson[]> {
  const allowed = authorise(context, 'read enquiries');
  return allowed.ok ? ok(deskPeople(context)) : allowed;
}

/** For use cases that have asked already who may do what. */
export function deskPeople(context: Context): readonly ActingPerson[] {
  const { db } = context.database;
  const users = listUsers(db).filter(
    ({ role, disabled_at }) => disabled_at === null && (role === 'desk' || role === 'administrator'),
  );
  const all = [...peopleWithWork(db), ...users.map(({ id, name }) => ({ id, name })), actingPerson(context)];
  return [...new Map(all.map((person) => [person.id, person])).values()].sort((a, b) => a.name.localeCompare(b.name));
}
