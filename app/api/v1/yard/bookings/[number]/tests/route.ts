import { asking } from '#app/_lib/asking.ts';
import type { BookingParams } from '#app/_lib/booking-params.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { torqueTestRequest } from '#lib/contracts/yard-scan.ts';
import { recordTorqueTest } from '#lib/services/yard/picking/record-check.ts';

/** A function test at torque: where it was set, what the instrument read. */
export async function POST(request: Request, { params }: BookingParams): Promise<Response> {
  const body = await readBody(request, torqueTestRequest);
  if (!body.ok) return problem(body);
  return respond(recordTorqueTest(await asking(), { number: (await params).number, ...body.value }));
}
