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
import { optionInputs, PAPER_KINDS, paperOf } from './papers-of.ts';

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
  const [base = '', number] = input.kind.split('-option-');
  const option = number === undefined ? 1 : Number(number);
  const kind = PAPER_KINDS.find((name) => name === base);
  if (!kind)
    return failed({
      code: 'no-such-paper',
      sentence: `There is no paper “${input.kind}”; there are ${PAPER_KINDS.join(', ')}.`,
    });
  const enquiry = readEnquiry(context, input.enquiryId);
  if (!enquiry.ok) return enquiry;
  const name = enquiry.value.row.number;
  const papers = gatherPapers(context, { enquiryId: input.enquiryId, number: `Draft ${name}` });
  if (!papers.ok) return papers;
  // The quote tells all options; the other papers are of one.
  const of = kind === 'quote' ? papers.value : optionInputs(papers.value)[option - 1];
  if (of === undefined || (kind === 'quote' && option !== 1))
    return failed({ code: 'no-such-option', sentence: 'That option is not there; load the page again.' });
  const bytes = await drawPaper(paperOf(kind, of));
  return ok({ fileName: `${name}-${input.kind}-draft.pdf`, mime: 'application/pdf', bytes });
}
