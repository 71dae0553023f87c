/*
 * Every rule with its severity and source.
 * Invariant: the list is the rules themselves, not a copy kept beside them.
 * Not here: what the rules decide.
 * Read next: ../rules/all-rules.ts.
 */
import { type ListedRule, listRules } from '#lib/rules/all-rules.ts';

export function listAllRules(): readonly ListedRule[] {
  return listRules();
}
