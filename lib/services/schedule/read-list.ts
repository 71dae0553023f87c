/*
 * Gives back a customer's list as it was received.
 * Invariant: the same bytes that came in.
 * Not here: reading it.
 * Read next: receive-list.ts.
 */
import { findListFile } from '#db/queries/schedule.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';

export function readList(
  context: Context,
  key: { readonly enquiryId: number; readonly fileId: number },
): Result<{ readonly fileName: string; readonly bytes: Uint8Array }> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const file = findListFile(context.database.db, key);
  if (!file) return failed({ code: 'no-such-list', sentence: 'That list is not there any more; upload it again.' });
  return ok({ fileName: file.file_name, bytes: file.bytes });
}
