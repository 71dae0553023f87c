import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { walkScanRequest } from '#lib/contracts/yard-scan.ts';
import { walkScan } from '#lib/services/yard/picking/walk-scan.ts';

/** One scan on the walk of a day; the same key gets the same answer. */
export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, walkScanRequest);
  return body.ok ? respond(walkScan(await asking(), body.value)) : problem(body);
}
