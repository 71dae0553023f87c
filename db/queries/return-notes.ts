/*
 * Reads and writes the Desk's words on charges, and the return notes that were issued.
 * Invariant: a word counts until a note takes it; a note is only ever added.
 * Not here: working charges out (lib/services/yard/return-charges.ts).
 * Read next: ../schema/return-decision.ts, ../schema/return-note.ts.
 */
import { and, asc, eq, isNull } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { returnDecision } from '../schema/return-decision.ts';
import { returnNote } from '../schema/return-note.ts';

export type DecisionRow = typeof returnDecision.$inferSelect;
export type NoteRow = typeof returnNote.$inferSelect;

/** What was said and stands on no note yet. */
export function openDecisions(db: DbOrTx, bookingId: number): readonly DecisionRow[] {
  return db
    .select()
    .from(returnDecision)
    .where(and(eq(returnDecision.booking_id, bookingId), isNull(returnDecision.note_id)))
    .all();
}

interface ChargeKey {
  readonly bookingId: number;
  readonly charge: string;
}

export function removeDecision(db: DbOrTx, { bookingId, charge }: ChargeKey): void {
  db.delete(returnDecision)
    .where(
      and(eq(returnDecision.booking_id, bookingId), eq(returnDecision.charge, charge), isNull(returnDecision.note_id)),
    )
    .run();
}

export function putDecision(db: DbOrTx, row: typeof returnDecision.$inferInsert): void {
  removeDecision(db, { bookingId: row.booking_id, charge: row.charge });
  db.insert(returnDecision).values(row).run();
}

interface OnNote {
  readonly bookingId: number;
  readonly noteId: number;
}

export function putDecisionsOnNote(db: DbOrTx, { bookingId, noteId }: OnNote): void {
  db.update(returnDecision)
    .set({ note_id: noteId })
    .where(and(eq(returnDecision.booking_id, bookingId), isNull(returnDecision.note_id)))
    .run();
}

export function notesOfBooking(db: DbOrTx, bookingId: number): readonly NoteRow[] {
  return db.select().from(returnNote).where(eq(returnNote.booking_id, bookingId)).orderBy(asc(returnNote.id)).all();
}

export function findNote(db: DbOrTx, number: string): NoteRow | undefined {
  return db.select().from(returnNote).where(eq(returnNote.number, number)).get();
}

export function noteWith(db: DbOrTx, id: number): NoteRow | undefined {
  return db.select().from(returnNote).where(eq(returnNote.id, id)).get();
}

interface OnThatNote {
  readonly noteId: number;
  readonly charge: string;
}

/** The word on a charge as it stands on a note. */
export function decisionOnNote(db: DbOrTx, { noteId, charge }: OnThatNote): DecisionRow | undefined {
  return db
    .select()
    .from(returnDecision)
    .where(and(eq(returnDecision.note_id, noteId), eq(returnDecision.charge, charge)))
    .get();
}

export function insertNote(db: DbOrTx, row: typeof returnNote.$inferInsert): number {
  return db.insert(returnNote).values(row).returning({ id: returnNote.id }).get().id;
}
