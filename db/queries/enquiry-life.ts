/*
 * Reads and writes the steps, notes and files of enquiries.
 * Invariant: a step is written together with the state; bytes of a file are read only when one file is asked for.
 * Not here: which steps are allowed (lib/enquiry).
 * Read next: ../schema/enquiry-move.ts.
 */
import { asc, desc, eq, sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { attachment } from '../schema/attachment.ts';
import { enquiry } from '../schema/enquiry.ts';
import { enquiryMove } from '../schema/enquiry-move.ts';
import { enquiryNote } from '../schema/enquiry-note.ts';

export type MoveRow = typeof enquiryMove.$inferSelect;
export type NoteRow = typeof enquiryNote.$inferSelect;
export type AttachmentRow = typeof attachment.$inferSelect;

export function writeMove(db: DbOrTx, move: Omit<MoveRow, 'id'>): void {
  db.update(enquiry)
    .set({ state: move.to_state, updated_at: move.at, version: sql`${enquiry.version} + 1` })
    .where(eq(enquiry.id, move.enquiry_id))
    .run();
  db.insert(enquiryMove).values(move).run();
}

/** The newest first. */
export function movesOf(db: DbOrTx, enquiryId: number): readonly MoveRow[] {
  return db
    .select()
    .from(enquiryMove)
    .where(eq(enquiryMove.enquiry_id, enquiryId))
    .orderBy(desc(enquiryMove.id))
    .limit(200)
    .all();
}

export function notesOf(db: DbOrTx, enquiryId: number): readonly NoteRow[] {
  return db.select().from(enquiryNote).where(eq(enquiryNote.enquiry_id, enquiryId)).orderBy(asc(enquiryNote.id)).all();
}

export function findNote(db: DbOrTx, id: number): NoteRow | undefined {
  return db.select().from(enquiryNote).where(eq(enquiryNote.id, id)).get();
}

export function insertNote(db: DbOrTx, row: Omit<NoteRow, 'id' | 'changed_at' | 'struck_at' | 'struck_by'>): number {
  return Number(db.insert(enquiryNote).values(row).returning({ id: enquiryNote.id }).get().id);
}

export function changeNote(
  db: DbOrTx,
  { id, ...set }: { readonly id: number } & Partial<Pick<NoteRow, 'text' | 'changed_at' | 'struck_at' | 'struck_by'>>,
): void {
  db.update(enquiryNote).set(set).where(eq(enquiryNote.id, id)).run();
}

export type AttachmentSummary = Omit<AttachmentRow, 'bytes'>;

const SUMMARY = {
  id: attachment.id,
  enquiry_id: attachment.enquiry_id,
  file_name: attachment.file_name,
  size_bytes: attachment.size_bytes,
  sha256: attachment.sha256,
  added_by: attachment.added_by,
  added_at: attachment.added_at,
  removed_at: attachment.removed_at,
};

export function attachmentsOf(db: DbOrTx, enquiryId: number): readonly AttachmentSummary[] {
  return db.select(SUMMARY).from(attachment).where(eq(attachment.enquiry_id, enquiryId)).orderBy(attachment.id).all();
}

export function findAttachment(db: DbOrTx, id: number): AttachmentRow | undefined {
  return db.select().from(attachment).where(eq(attachment.id, id)).get();
}

export function insertAttachment(db: DbOrTx, row: Omit<AttachmentRow, 'id' | 'removed_at'>): number {
  return Number(db.insert(attachment).values(row).returning({ id: attachment.id }).get().id);
}

export function putAttachmentAway(
  db: DbOrTx,
  { id, at }: { readonly id: number /** Null brings it back. */; readonly at: string | null },
): void {
  db.update(attachment).set({ removed_at: at }).where(eq(attachment.id, id)).run();
}
