/*
 * Why a part serves a line, or why it does not.
 * Invariant: the answer names the rules and numbers that decide.
 * Not here: finding what does serve it (open-line.ts).
 * Read next: ../kits/explain-part.ts.
 */
import { findLine } from '#db/queries/schedule.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { explainPart, type PartAnswer } from '#lib/kits/explain-part.ts';
import { authorise } from './authorise.ts';
import type { Context } from './context.ts';
import { readEnquiry } from './enquiry-record.ts';
import { houseModels } from './house-facts.ts';
import { dutyOf, readRecord } from './schedule-record.ts';
import { siteKnowledge } from './site-knowledge.ts';

export interface PartQuestion {
  readonly enquiryId: number;
  readonly lineId: number;
  readonly part: string;
}

export function whyPart(context: Context, question: PartQuestion): Result<PartAnswer> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, question.enquiryId);
  if (!enquiry.ok) return enquiry;
  const row = findLine(context.database.db, question);
  if (!row)
    return failed({ code: 'no-such-line', sentence: 'That line is not there any more; go back to the schedule.' });
  const { site, row: enquiryRow } = enquiry.value;
  const record = readRecord(row, siteKnowledge(context, enquiry.value));
  const duty = dutyOf({ record, site, siteKey: enquiryRow.site_json });
  return ok(
    explainPart({ lineDuty: { line: record.line, duty }, site, models: houseModels(context), part: question.part }),
  );
}
