/*
 * Decides what may still be done to a note: its author changes it for some minutes, later it can only be struck through.
 * Invariant: what was written stays to be read.
 * Not here: keeping notes (lib/services/enquiries/enquiry-notes.ts).
 * Read next: moves.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';

/** House practice, no source. */
export const NOTE_CHANGE_MINUTES = 15;

interface NoteQuestion {
  readonly authorId: string;
  readonly askerId: string;
  readonly writtenAt: string;
  readonly now: Date;
  readonly isStruck: boolean;
}

export function mayChangeNote({ authorId, askerId, writtenAt, now, isStruck }: NoteQuestion): Result<true> {
  if (isStruck) return failed({ code: 'note-struck', sentence: 'The note is struck through; write a new one.' });
  if (authorId !== askerId)
    return failed({
      code: 'note-of-another',
      sentence: 'Somebody else wrote this note; write one of your own below it.',
    });
  if (now.getTime() - Date.parse(writtenAt) > NOTE_CHANGE_MINUTES * 60_000)
    return failed({
      code: 'note-too-old',
      sentence: `A note can be changed for ${NOTE_CHANGE_MINUTES} minutes; strike it through and write a new one.`,
    });
  return ok(true);
}
