import { asking } from '#app/_lib/asking.ts';
import type { BookingParams } from '#app/_lib/booking-params.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { caseRequest } from '#lib/contracts/yard-scan.ts';
import { addCase, packAnew } from '#lib/services/yard/packing/change-load.ts';

export async function POST(request: Request, { params }: BookingParams): Promise<Response> {
  const body = await readBody(request, caseRequest);
  if (!body.ok) return problem(body);
  return respond(addCase(await asking(), { number: (await params).number, ...body.value }));
}

/** Packing begins anew, with what is proposed. */
export async function DELETE(_request: Request, { params }: BookingParams): Promise<Response> {
  return respond(packAnew(await asking(), await params));
}
