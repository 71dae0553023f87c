/*
 * Draws one paper of an enquiry as a draft from its current plan.
 * Invariant: a draft says so in its number and is not kept.
 * Not here: issuing (issue-quote.ts).
 * Read next: enquiry-papers.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { drawPaper } from '#lib/workers/draw-paper.ts';
import { gatherPapers } from './enquiry-papers.ts';
import { PAPER_KINDS, paperOf } from './papers-of.ts';

export interface DrawnPaper {
  readonly fileName: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
}

export async function draftPaper(
  context: Context,
  input: { readonly enquiryId: number; readonly kind: string },
): Promise<Result<DrawnPaper>> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const kind = PAPER_KINDS.find((name) => name === input.kind);
  if (!kind)
    return failed({
      code: 'no-such-paper',
      sentence: `There is no paper “${input.kind}”; there are ${PAPER_KINDS.join(', ')}.`,
    });
  const enquiry = readEnquiry(context, input.enquiryId);
  if (!enquiry.ok) return enquiry;
  const number = `Draft ${enquiry.value.row.number}`;
  const papers = gatherPapers(context, { enquiryId: input.enquiryId, number });
  if (!papers.ok) return papers;
  const bytes = await drawPaper(paperOf(kind, papers.value));
  return ok({ fileName: `${enquiry.value.row.number}-${kind}-draft.pdf`, mime: 'application/pdf', bytes });
}
