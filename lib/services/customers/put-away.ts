/*
 * Puts a customer, site or contact away, or brings it back.
 * Invariant: nothing is deleted; enquiries that name it keep it, and it is not offered for new ones.
 * Not here: removing lines or files of an enquiry.
 * Read next: open-customer.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { changeCustomer, findCustomer } from '#db/queries/customers.ts';
import { changeContact, changeSite, findContact, findSite } from '#db/queries/places.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { noSuchContact } from './save-contact.ts';
import { noSuchCustomer } from './save-customer.ts';
import { noSuchSite } from './save-site.ts';

interface PutAway {
  readonly kind: 'customer' | 'site' | 'contact';
  readonly id: number;
  readonly archived: 'yes' | 'no';
}

export function putAway(context: Context, asked: PutAway): Result<{ readonly archived: 'yes' | 'no' }> {
  const allowed = authorise(context, 'change customers');
  if (!allowed.ok) return allowed;
  const { kind, id, archived } = asked;
  const owner = ownerOf(context.database.db, asked);
  if (!owner.ok) return owner;
  const at = timestamp(context);
  const change = { id, at, set: { archived_at: archived === 'yes' ? at : null } };
  return context.database.db.transaction(
    (tx) => {
      if (kind === 'customer') changeCustomer(tx, change);
      else if (kind === 'site') changeSite(tx, change);
      else changeContact(tx, change);
      const action = `${kind} ${archived === 'yes' ? 'put away' : 'brought back'}`;
      logChange(tx, { context, deed: { action, subject: `customer ${owner.value}`, detail: { [kind]: id } } });
      return ok({ archived });
    },
    { behavior: 'immediate' },
  );
}

/** The customer in whose log it is written. */
function ownerOf(db: DbOrTx, { kind, id }: PutAway): Result<number> {
  if (kind === 'customer') {
    const row = findCustomer(db, id);
    return row ? ok(row.id) : noSuchCustomer();
  }
  const row = kind === 'site' ? findSite(db, id) : findContact(db, id);
  if (row) return ok(row.customer_id);
  return kind === 'site' ? noSuchSite() : noSuchContact();
}
