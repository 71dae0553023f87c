/*
 * Gives the frozen bytes of a return note.
 * Invariant: the bytes that were stored when it was issued; their hash is checked before they are given out.
 * Not here: issuing it (issue-return-note.ts).
 * Read next: issue-return-note.ts.
 */
import { findNote } from '#db/queries/return-notes.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { sha256 } from '#lib/services/sha256.ts';

export interface NotePaper {
  readonly fileName: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
}

export function readReturnNote(context: Context, number: string): Result<NotePaper> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const note = findNote(context.database.db, number);
  if (!note) return failed({ code: 'no-such-note', sentence: `There is no return note ${number}.` });
  invariant(sha256(note.bytes) === note.sha256, `The stored bytes of ${number} do not match their hash.`);
  return ok({ fileName: `${number}-return-note.pdf`, mime: 'application/pdf', bytes: note.bytes });
}
