/*
 * Writes, changes and strikes through the notes of an enquiry.
 * Invariant: notes are only added to; its author changes one for some minutes, whoever may change enquiries strikes one through and takes that back.
 * Not here: how long a note may be changed (lib/enquiry/decide-note.ts).
 * Read next: open-enquiry-life.ts.
 */
import { findEnquiry } from '#db/queries/enquiries.ts';
import { changeNote as changeRow, findNote, insertNote, type NoteRow } from '#db/queries/enquiry-life.ts';
import { mayChangeNote } from '#lib/enquiry/decide-note.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { noSuchEnquiry } from './enquiry-record.ts';

export interface NoteKey {
  readonly enquiryId: number;
  readonly noteId: number;
}

export function addNote(
  context: Context,
  { enquiryId, text }: { readonly enquiryId: number; readonly text: string },
): Result<{ readonly id: number }> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  if (!findEnquiry(context.database.db, enquiryId)) return noSuchEnquiry(enquiryId);
  if (text.trim() === '') return emptyNote();
  const { id: author_id, name: author } = actingPerson(context);
  return context.database.db.transaction(
    (tx) => {
      const row = { enquiry_id: enquiryId, text: text.trim(), author_id, author, written_at: timestamp(context) };
      const id = insertNote(tx, row);
      logChange(tx, {
        context,
        deed: { action: 'note written', subject: `enquiry ${enquiryId}`, detail: { note: id } },
      });
      return ok({ id });
    },
    { behavior: 'immediate' },
  );
}

export function changeNote(context: Context, change: NoteKey & { readonly text: string }): Result<true> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const note = loadNote(context, change);
  if (!note.ok) return note;
  if (change.text.trim() === '') return emptyNote();
  const { author_id, written_at, struck_at, text: before } = note.value;
  const may = mayChangeNote({
    authorId: author_id,
    askerId: actingPerson(context).id,
    writtenAt: written_at,
    now: context.now(),
    isStruck: struck_at !== null,
  });
  if (!may.ok) return may;
  return context.database.db.transaction((tx) => {
    changeRow(tx, { id: change.noteId, text: change.text.trim(), changed_at: timestamp(context) });
    const detail = { note: change.noteId, before };
    logChange(tx, { context, deed: { action: 'note changed', subject: `enquiry ${change.enquiryId}`, detail } });
    return ok(true as const);
  });
}

/** Strikes a note through; a second time takes that back. */
export function strikeNote(context: Context, key: NoteKey): Result<{ readonly struck: 'yes' | 'no' }> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const note = loadNote(context, key);
  if (!note.ok) return note;
  const struck = note.value.struck_at === null ? 'yes' : 'no';
  return context.database.db.transaction((tx) => {
    const at = struck === 'yes' ? timestamp(context) : null;
    changeRow(tx, { id: key.noteId, struck_at: at, struck_by: at === null ? '' : context.actor.name });
    const action = struck === 'yes' ? 'note struck through' : 'note taken up again';
    logChange(tx, { context, deed: { action, subject: `enquiry ${key.enquiryId}`, detail: { note: key.noteId } } });
    return ok({ struck });
  });
}

function loadNote(context: Context, { enquiryId, noteId }: NoteKey): Result<NoteRow> {
  const note = findNote(context.database.db, noteId);
  if (note && note.enquiry_id === enquiryId) return ok(note);
  return failed({ code: 'no-such-note', sentence: 'That note is not there; load the page again.' });
}

function emptyNote(): Result<never> {
  return failed({ code: 'note-empty', sentence: 'Write something first.' });
}
