/*
 * Changes whose work an enquiry is, when it is due, the customer's reference, how it came and whom to ask.
 * Invariant: each fact is changed only from what its sender saw; where somebody was first nothing at all is changed, and the answer says what stands there.
 * Not here: states (move-enquiry.ts), site and plan (change-enquiry.ts).
 * Read next: list-people.ts.
 */
import { changeEnquiry as changeRow, type EnquiryRow, findEnquiry } from '#db/queries/enquiries.ts';
import { findContact } from '#db/queries/places.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { deskPeople } from '#lib/services/access/list-desk-people.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { noSuchContact } from '#lib/services/customers/save-contact.ts';
import { logChange } from '#lib/services/log-change.ts';
import { noSuchEnquiry } from './enquiry-record.ts';
import { moveByDeed } from './move-enquiry.ts';

export interface EnquiryLife {
  readonly assigned_to?: string | undefined;
  readonly due_on?: string | null | undefined;
  readonly reference?: string | undefined;
  readonly source?: string | undefined;
  readonly contact_id?: number | null | undefined;
}

interface LifeChange {
  readonly enquiryId: number;
  readonly set: EnquiryLife;
  readonly was: EnquiryLife;
}

const FIELDS = ['assigned_to', 'due_on', 'reference', 'source', 'contact_id'] as const;

const WORDS: Readonly<Record<(typeof FIELDS)[number], string>> = {
  assigned_to: 'whose work it is',
  due_on: 'the due day',
  reference: 'the customer’s reference',
  source: 'how it came',
  contact_id: 'the contact',
};

export function changeEnquiryLife(context: Context, change: LifeChange): Result<{ readonly version: number }> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx): Result<{ readonly version: number }> => {
      const row = findEnquiry(tx, change.enquiryId);
      if (!row) return noSuchEnquiry(change.enquiryId);
      const conflict = conflictOf(row, change);
      if (conflict !== null) return failed({ code: 'changed-meanwhile', sentence: conflict });
      const set = columnsOf(context, { row, set: change.set });
      if (!set.ok) return set;
      changeRow(tx, { id: row.id, at: timestamp(context), set: set.value });
      const deed = { action: 'enquiry changed', subject: `enquiry ${row.id}`, detail: set.value };
      logChange(tx, { context, deed });
      if ((set.value.assigned_to ?? '') !== '' && row.state === 'new') {
        moveByDeed(tx, { context, enquiryId: row.id, by: 'work', to: 'being worked' });
      }
      return ok({ version: findEnquiry(tx, row.id)?.version ?? row.version });
    },
    { behavior: 'immediate' },
  );
}

function conflictOf(row: EnquiryRow, { set, was }: LifeChange): string | null {
  const other = FIELDS.filter((field) => set[field] !== undefined && was[field] !== row[field]);
  if (other.length === 0) return null;
  const told = other.map((field) => `${WORDS[field]} (now ${standing(row, field)})`);
  return `Somebody else changed ${told.join(' and ')} while you were working. Nothing was saved; look at it and choose again.`;
}

function standing(...[row, field]: readonly [EnquiryRow, (typeof FIELDS)[number]]): string {
  const value = field === 'assigned_to' ? row.assigned_name : row[field];
  return value === null || value === '' ? 'open' : `“${value}”`;
}

function columnsOf(
  context: Context,
  { row, set }: { readonly row: EnquiryRow; readonly set: EnquiryLife },
): Result<Partial<Pick<EnquiryRow, (typeof FIELDS)[number] | 'assigned_name'>>> {
  const { assigned_to, contact_id, ...plain } = set;
  const given = Object.fromEntries(Object.entries(plain).filter(([, value]) => value !== undefined));
  if (typeof contact_id === 'number') {
    if (findContact(context.database.db, contact_id)?.customer_id !== row.customer_id) return noSuchContact();
  }
  const contact = contact_id === undefined ? {} : { contact_id };
  if (assigned_to === undefined) return ok({ ...given, ...contact });
  const person = deskPeople(context).find(({ id }) => id === assigned_to);
  if (assigned_to !== '' && !person) {
    return failed({ code: 'no-such-person', sentence: 'Nobody of that name works at the Desk; choose from the list.' });
  }
  return ok({ ...given, ...contact, assigned_to, assigned_name: person?.name ?? '' });
}
