/*
 * Every rule with its severity and source.
 * Invariant: the list is the rules themselves, not a copy kept beside them.
 * Not here: what the rules decide.
 * Read next: ../../rules/all-rules.ts.
 */
import { ok, type Result } from '#lib/kernel/result.ts';
import { type ListedRule, listRules } from '#lib/rules/all-rules.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';

export function listAllRules(context: Context): Result<readonly ListedRule[]> {
  const allowed = authorise(context, 'read rules');
  if (!allowed.ok) return allowed;
  return ok(listRules());
}
