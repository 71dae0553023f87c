/*
 * Who is here already, while a customer, a site or a contact is typed.
 * Invariant: reads only and never refuses because something is alike; what was put away is told as such.
 * Not here: what counts as alike (lib/alike).
 * Read next: ../../alike/find-alike.ts.
 */
import { reachableCustomers } from '#db/queries/customers.ts';
import { allReachable, sitesOf } from '#db/queries/places.ts';
import { ALIKE_REASONS, findAlike, type Known, type Typed } from '#lib/alike/find-alike.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';

export interface AlikeAsked extends Typed {
  readonly kind: 'customer' | 'site' | 'contact';
  /** Whose site or contact it is. */
  readonly customerId?: number | undefined;
  /** The one that is being edited itself. */
  readonly self?: number | undefined;
}

export interface AlikeView {
  readonly id: number;
  readonly customerId: number;
  readonly name: string;
  /** The customer, where a site or contact was found. */
  readonly of: string;
  readonly why: string;
  readonly archived: 'yes' | 'no';
}

type Candidate = Known & Pick<AlikeView, 'customerId' | 'of' | 'archived'>;

export function alikeRecords(context: Context, asked: AlikeAsked): Result<readonly AlikeView[]> {
  const allowed = authorise(context, 'read customers');
  if (!allowed.ok) return allowed;
  const all = candidates(context, asked).filter(({ id }) => id !== asked.self);
  const byId = new Map(all.map((candidate) => [candidate.id, candidate]));
  return ok(
    findAlike({ typed: asked, among: all }).flatMap(({ id, reason }) => {
      const found = byId.get(id);
      if (!found) return [];
      const { customerId, name, of, archived } = found;
      return [{ id, customerId, name, of, why: ALIKE_REASONS[reason], archived }];
    }),
  );
}

function candidates(context: Context, { kind, customerId }: AlikeAsked): readonly Candidate[] {
  const db = context.database.db;
  const archivedOf = (at: string | null): 'yes' | 'no' => (at === null ? 'no' : 'yes');
  if (kind === 'site') {
    return sitesOf(db, customerId ?? 0).map((row) => ({
      ...{ id: row.id, customerId: row.customer_id, name: row.name, of: '', archived: archivedOf(row.archived_at) },
      emails: [],
      telephones: [],
    }));
  }
  const customers = reachableCustomers(db);
  const contacts = allReachable(db);
  if (kind === 'contact') {
    const names = new Map(customers.map(({ id, name }) => [id, name]));
    return contacts.map((row) => ({
      ...{ id: row.id, customerId: row.customer_id, name: row.name, of: names.get(row.customer_id) ?? '' },
      archived: archivedOf(row.archived_at),
      emails: [row.email],
      telephones: [row.telephone],
    }));
  }
  const people = new Map<number, (typeof contacts)[number][]>();
  for (const row of contacts) people.set(row.customer_id, [...(people.get(row.customer_id) ?? []), row]);
  return customers.map((row) => {
    const own = [row, ...(people.get(row.id) ?? [])];
    return {
      ...{ id: row.id, customerId: row.id, name: row.name, of: '', archived: archivedOf(row.archived_at) },
      emails: own.map(({ email }) => email),
      telephones: own.map(({ telephone }) => telephone),
    };
  });
}
