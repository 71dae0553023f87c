import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import type { BookingParams } from '#app/_lib/yard-params.ts';
import { chargeWordSchema } from '#lib/contracts/yard-moves.ts';
import { decideCharge } from '#lib/services/yard/back/decide-charge.ts';
import { openCharges } from '#lib/services/yard/back/open-charges.ts';

export async function GET(_request: Request, { params }: BookingParams): Promise<Response> {
  return respond(openCharges(await asking(), (await params).number));
}

export async function POST(request: Request, { params }: BookingParams): Promise<Response> {
  const body = await readBody(request, chargeWordSchema);
  if (!body.ok) return problem(body);
  return respond(decideCharge(await asking(), { number: (await params).number, ...body.value }));
}
