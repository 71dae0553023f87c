import { respond } from '#app/_lib/respond.ts';
import { ok } from '#lib/kernel/result.ts';
import { listAllRules } from '#lib/services/list-all-rules.ts';

export function GET(): Response {
  return respond(ok(listAllRules()));
}
