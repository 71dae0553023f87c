/*
 * The people of the Desk who may be given an enquiry.
 * Invariant: the one who asks is among them; whoever has work already stays on the list.
 * Not here: accounts and roles.
 * Read next: change-enquiry-life.ts.
 */
import { peopleWithWork } from '#db/queries/enquiries.ts';
import { type ActingPerson, actingPerson } from './acting-person.ts';
import type { Context } from './context.ts';

export function listPeople(context: Context): readonly ActingPerson[] {
  const all = [actingPerson(context), ...peopleWithWork(context.database.db)];
  return [...new Map(all.map((person) => [person.id, person])).values()].sort((a, b) => a.name.localeCompare(b.name));
}
