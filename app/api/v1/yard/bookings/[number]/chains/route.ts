import { asking } from '#app/_lib/asking.ts';
import type { BookingParams } from '#app/_lib/booking-params.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { chainTriedRequest } from '#lib/contracts/yard-scan.ts';
import { recordChainTried } from '#lib/services/yard/picking/record-check.ts';

/** A chain of the job was put together and fits. */
export async function POST(request: Request, { params }: BookingParams): Promise<Response> {
  const body = await readBody(request, chainTriedRequest);
  if (!body.ok) return problem(body);
  return respond(recordChainTried(await asking(), { number: (await params).number, ...body.value }));
}
