/*
 * Writes who asks: a customer of its own for the order, with the contact as it was typed.
 * Invariant: a stranger is never joined to a customer that is here already, whatever name they type; the Desk does that.
 * Not here: customers that the Desk makes (../customers/save-customer.ts).
 * Read next: hand-over-order.ts, quote-order.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { findPlaceholder } from '#db/queries/customers.ts';
import { changeEnquiry as changeRow } from '#db/queries/enquiries.ts';
import { insertContact } from '#db/queries/places.ts';
import { changeSelfOrder } from '#db/queries/self-orders.ts';
import type { OrderContact } from '#lib/contracts/self-service.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { NOTHING_AGREED, writeCustomer } from '#lib/services/customers/save-customer.ts';
import type { Language } from '#lib/wording/language.ts';
import type { OpenOrder } from './open-link.ts';

interface Naming {
  readonly context: Context;
  readonly opened: OpenOrder;
  readonly contact: OrderContact;
  /** What their papers are in; that in which the order began where it is absent. */
  readonly language?: Language;
}

/** Once an order has a customer, of its own or that of a key, it stays; a corrected name is kept with the order for the Desk to see. */
export function nameCustomer(tx: DbOrTx, { context, opened, contact, language }: Naming): void {
  const { order, enquiry } = opened;
  const at = timestamp(context);
  changeSelfOrder(tx, { enquiryId: order.enquiry_id, set: { contact_json: JSON.stringify(contact) } });
  if (enquiry.row.customer_id !== findPlaceholder(tx)?.id) return;
  const { name, firm, email, telephone = '' } = contact;
  const facts = { ...NOTHING_AGREED, contact: name, email, telephone, language: language ?? order.language };
  const customer = writeCustomer(tx, { context: opened.desk, entry: { name: firm, facts } });
  const contactId = insertContact(tx, {
    customer_id: customer.id,
    ...{ name, email, telephone, position: '', note: 'Typed in self-service.', site_id: null },
    created_at: at,
    updated_at: at,
  });
  changeRow(tx, { id: enquiry.row.id, at, set: { customer_id: customer.id, contact_id: contactId } });
}
