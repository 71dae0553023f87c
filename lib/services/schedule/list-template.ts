/*
 * The template of a valve schedule to download.
 * Invariant: it imports without a problem.
 * Not here: what the columns mean (lib/intake).
 * Read next: ../../intake/template.ts.
 */
import { templateCsv } from '#lib/intake/template.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';

export function listTemplate(context: Context): Result<string> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  return ok(templateCsv());
}
