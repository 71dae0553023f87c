import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import type { BookingParams } from '#app/_lib/yard-params.ts';
import { beginDeliverySchema } from '#lib/contracts/yard-moves.ts';
import { beginDelivery } from '#lib/services/yard/out/load-delivery.ts';

export async function POST(request: Request, { params }: BookingParams): Promise<Response> {
  const body = await readBody(request, beginDeliverySchema);
  if (!body.ok) return problem(body);
  return respond(beginDelivery(await asking(), { number: (await params).number, ...body.value }), 201);
}
