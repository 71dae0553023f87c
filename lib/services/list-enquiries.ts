/*
 * The enquiries of the house, newest change first.
 * Invariant: reads only.
 * Not here: one enquiry (open-enquiry.ts).
 * Read next: open-enquiry.ts.
 */
import { type EnquiryListRow, listEnquiries as listRows } from '#db/queries/enquiries.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from './authorise.ts';
import type { Context } from './context.ts';

export function listEnquiries(context: Context): Result<readonly EnquiryListRow[]> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  return ok(listRows(context.database.db));
}
