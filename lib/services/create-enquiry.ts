/*
 * Opens a new enquiry for a known or a new customer, with a site that holds only what was said.
 * Invariant: the number, the enquiry and the log entry are written together or not at all.
 * Not here: the schedule (receive-list.ts).
 * Read next: open-enquiry.ts.
 */
import { addAuditEntry } from '#db/queries/audit.ts';
import { findCustomer, insertCustomer } from '#db/queries/customers.ts';
import { insertEnquiry } from '#db/queries/enquiries.ts';
import { takeNumber } from '#db/queries/house.ts';
import { constraintsToJson, NO_CONSTRAINTS } from '#lib/contracts/constraints.ts';
import { parseSite } from '#lib/contracts/site.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from './authorise.ts';
import { type Context, timestamp, today } from './context.ts';

export interface NewEnquiry {
  readonly title: string;
  readonly customer: { readonly id: number } | { readonly name: string };
  readonly site: unknown;
}

export function createEnquiry(
  context: Context,
  input: NewEnquiry,
): Result<{ readonly id: number; readonly number: string }> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  if (input.title.trim() === '')
    return failed({ code: 'title-missing', sentence: 'Give the enquiry a title, such as the place or the job.' });
  const site = parseSite(input.site, { startsOn: today(context) });
  if (!site.ok) return site;
  const db = context.database.db;
  if ('id' in input.customer && !findCustomer(db, input.customer.id)) {
    return failed({
      code: 'no-such-customer',
      sentence: 'That customer is not known; choose one from the list or type a new name.',
    });
  }
  if ('name' in input.customer && input.customer.name.trim() === '') {
    return failed({ code: 'customer-missing', sentence: 'Choose a customer or type the name of a new one.' });
  }
  const at = timestamp(context);
  return ok(
    db.transaction(
      (tx) => {
        const customerId =
          'id' in input.customer ? input.customer.id : newCustomer(tx, { name: input.customer.name, at });
        const number = `E-${String(takeNumber(tx, 'enquiry')).padStart(5, '0')}`;
        const id = insertEnquiry(tx, {
          number,
          customer_id: customerId,
          title: input.title.trim(),
          state: 'new',
          site_json: JSON.stringify(input.site),
          constraints_json: JSON.stringify(constraintsToJson(NO_CONSTRAINTS)),
          preference: 'cost',
          created_at: at,
          updated_at: at,
        });
        addAuditEntry(tx, {
          at,
          who: context.actor.name,
          action: 'enquiry opened',
          subject: `enquiry ${id}`,
          detail_json: JSON.stringify({ number }),
        });
        return { id, number };
      },
      { behavior: 'immediate' },
    ),
  );
}

type Tx = Parameters<typeof insertCustomer>[0];

function newCustomer(tx: Tx, input: { readonly name: string; readonly at: string }): number {
  const code = `C-${String(takeNumber(tx, 'customer')).padStart(4, '0')}`;
  return insertCustomer(tx, {
    code,
    name: input.name.trim(),
    facts_json: '{}',
    created_at: input.at,
    updated_at: input.at,
  });
}
