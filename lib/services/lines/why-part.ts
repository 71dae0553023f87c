/*
 * Why a part serves a line, or why it does not.
 * Invariant: the answer names the rules and numbers that decide.
 * Not here: finding what does serve it (open-line.ts).
 * Read next: ../../kits/why/explain-part.ts.
 */
import { ok, type Result } from '#lib/kernel/result.ts';
import { explainPart, type PartAnswer } from '#lib/kits/why/explain-part.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseModels } from '#lib/services/house/house-facts.ts';
import { type LineKey, loadLine } from '#lib/services/schedule/load-line.ts';
import { dutyOf } from '#lib/services/schedule/schedule-record.ts';

export interface PartQuestion extends LineKey {
  readonly part: string;
}

export function whyPart(context: Context, question: PartQuestion): Result<PartAnswer> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const loaded = loadLine(context, question);
  if (!loaded.ok) return loaded;
  const { enquiry, record } = loaded.value;
  const { site, row: enquiryRow } = enquiry;
  const duty = dutyOf({ record, site, siteKey: enquiryRow.site_json });
  return ok(
    explainPart({
      lineDuty: { line: record.line, duty },
      site,
      models: houseModels(context, site.startsOn),
      part: question.part,
    }),
  );
}
