/*
 * The spread of one line's duty by chance, on request.
 * Invariant: the line as it stands now; the same line gives the same answer.
 * Not here: drawing it (../../duty/sample-duty.ts), the interval that counts for safety (open-line.ts).
 * Read next: ../../duty/sample-duty.ts.
 */
import { type LineSpread, lineSpread } from '#lib/duty/line-spread.ts';
import { sampleDuty } from '#lib/duty/sample-duty.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { type LineKey, loadLine } from '#lib/services/schedule/load-line.ts';

interface SpreadQuestion extends LineKey {
  readonly runs: number;
}

/** Any number does: it only has to stay the same. */
export const SPREAD_SEED = 20_260_401;

export function spreadDuty(context: Context, question: SpreadQuestion): Result<LineSpread> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const loaded = loadLine(context, question);
  if (!loaded.ok) return loaded;
  const { enquiry, record } = loaded.value;
  return ok(lineSpread(sampleDuty({ line: record.line, site: enquiry.site, runs: question.runs, seed: SPREAD_SEED })));
}
