import { asking } from '#app/_lib/asking.ts';
import { respond } from '#app/_lib/respond.ts';
import { listAllRules } from '#lib/services/house/list-all-rules.ts';

export async function GET(): Promise<Response> {
  return respond(listAllRules(await asking()));
}
