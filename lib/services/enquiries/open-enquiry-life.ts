/*
 * The life of one enquiry: its state today and the steps from it, whose work it is, notes, files and its customer's contacts.
 * Invariant: reads only.
 * Not here: the schedule, plan and papers (open-enquiry.ts).
 * Read next: move-enquiry.ts, enquiry-notes.ts.
 */
import { findEnquiry } from '#db/queries/enquiries.ts';
import { type AttachmentSummary, attachmentsOf, type MoveRow, movesOf, notesOf } from '#db/queries/enquiry-life.ts';
import { contactsOf } from '#db/queries/places.ts';
import { mayChangeNote } from '#lib/enquiry/decide-note.ts';
import { type EnquiryState, movesFrom } from '#lib/enquiry/moves.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { type ActingPerson, actingPerson } from '#lib/services/access/acting-person.ts';
import { deskPeople } from '#lib/services/access/list-desk-people.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { type SiteLink, siteLinkOf, sitesToChoose } from '#lib/services/customers/site-difference.ts';
import { noSuchEnquiry } from './enquiry-record.ts';
import { enquiryStateToday } from './move-enquiry.ts';

export interface NoteView {
  readonly id: number;
  readonly text: string;
  readonly author: string;
  readonly writtenAt: string;
  readonly changedAt: string | null;
  readonly struckBy: string;
  readonly isStruck: boolean;
  /** Whether the one who asks may still change it. */
  readonly mayChange: boolean;
}

export interface EnquiryLifeView {
  readonly id: number;
  readonly customerId: number;
  readonly state: EnquiryState;
  /** The steps that may be taken by hand. */
  readonly steps: readonly EnquiryState[];
  readonly assigned_to: string;
  readonly assignedName: string;
  readonly due_on: string | null;
  readonly today: string;
  readonly reference: string;
  readonly source: string;
  readonly contact_id: number | null;
  readonly people: readonly ActingPerson[];
  readonly contacts: readonly { readonly id: number; readonly name: string; readonly reach: string }[];
  readonly moves: readonly MoveRow[];
  readonly notes: readonly NoteView[];
  readonly files: readonly AttachmentSummary[];
  readonly siteLink: SiteLink | null;
  readonly sites: readonly { readonly id: number; readonly name: string }[];
}

export function openEnquiryLife(context: Context, enquiryId: number): Result<EnquiryLifeView> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const db = context.database.db;
  const row = findEnquiry(db, enquiryId);
  const state = enquiryStateToday(db, { context, enquiryId });
  if (!row || state === null) return noSuchEnquiry(enquiryId);
  const { assigned_to, due_on, reference, source, contact_id } = row;
  return ok({
    ...{ id: row.id, customerId: row.customer_id, assigned_to, due_on, reference, source, contact_id },
    assignedName: row.assigned_name,
    state,
    steps: movesFrom({ from: state, by: 'by hand' }),
    today: today(context),
    people: deskPeople(context),
    contacts: contactsOf(db, row.customer_id)
      .filter((contact) => contact.archived_at === null || contact.id === contact_id)
      .map(({ id, name, telephone, email }) => ({
        id,
        name,
        reach: [telephone, email].filter((part) => part !== '').join(' · '),
      })),
    moves: movesOf(db, enquiryId),
    notes: notesFor(context, enquiryId),
    files: attachmentsOf(db, enquiryId),
    siteLink: siteLinkOf(context, row),
    sites: sitesToChoose(context, row),
  });
}

function notesFor(context: Context, enquiryId: number): readonly NoteView[] {
  const askerId = actingPerson(context).id;
  return notesOf(context.database.db, enquiryId).map((row) => {
    const isStruck = row.struck_at !== null;
    const question = { authorId: row.author_id, askerId, writtenAt: row.written_at, now: context.now(), isStruck };
    return {
      ...{ id: row.id, text: row.text, author: row.author, writtenAt: row.written_at, changedAt: row.changed_at },
      struckBy: row.struck_by,
      isStruck,
      mayChange: mayChangeNote(question).ok,
    };
  });
}
