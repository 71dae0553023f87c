/*
 * The spread of one line's duty by chance, on request.
 * Invariant: the line as it stands now; the same line gives the same answer.
 * Not here: drawing it (../duty/sample-duty.ts), the interval that counts for safety (open-line.ts).
 * Read next: ../duty/sample-duty.ts.
 */
import { findLine } from '#db/queries/schedule.ts';
import { type LineSpread, lineSpread } from '#lib/duty/line-spread.ts';
import { sampleDuty } from '#lib/duty/sample-duty.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from './authorise.ts';
import type { Context } from './context.ts';
import { readEnquiry } from './enquiry-record.ts';
import { readRecord } from './schedule-record.ts';
import { siteKnowledge } from './site-knowledge.ts';

interface SpreadQuestion {
  readonly enquiryId: number;
  readonly lineId: number;
  readonly runs: number;
}

/** Any number does: it only has to stay the same. */
export const SPREAD_SEED = 20_260_401;

export function spreadDuty(context: Context, question: SpreadQuestion): Result<LineSpread> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, question.enquiryId);
  if (!enquiry.ok) return enquiry;
  const row = findLine(context.database.db, question);
  if (!row)
    return failed({ code: 'no-such-line', sentence: 'That line is not there any more; go back to the schedule.' });
  const { line } = readRecord(row, siteKnowledge(context, enquiry.value));
  const { site } = enquiry.value;
  return ok(lineSpread(sampleDuty({ line, site, runs: question.runs, seed: SPREAD_SEED })));
}
