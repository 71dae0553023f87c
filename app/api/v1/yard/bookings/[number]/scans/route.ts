import { asking } from '#app/_lib/asking.ts';
import type { BookingParams } from '#app/_lib/booking-params.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { yardScanRequest } from '#lib/contracts/yard-scan.ts';
import { takeScan } from '#lib/services/yard/take-scan.ts';

/** One scan of the yard; the same key gets the same answer. */
export async function POST(request: Request, { params }: BookingParams): Promise<Response> {
  const body = await readBody(request, yardScanRequest);
  if (!body.ok) return problem(body);
  return respond(takeScan(await asking(), { number: (await params).number, scan: body.value }));
}
