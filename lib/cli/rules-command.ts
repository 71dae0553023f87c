/*
 * `rules`: every rule with its source.
 * Invariant: printed from the rules themselves.
 * Not here: judging by them.
 * Read next: ../rules/all-rules.ts.
 */
import { listRules } from '#lib/rules/all-rules.ts';
import type { Options } from './arguments.ts';

export function rulesCommand(options: Options): number {
  const rules = listRules();
  if (options.json) process.stdout.write(`${JSON.stringify(rules)}\n`);
  else
    for (const rule of rules)
      process.stdout.write(`${rule.id} (${rule.severity}): ${rule.title}. Source: ${rule.source}\n`);
  return 0;
}
