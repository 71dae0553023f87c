import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { whySchema } from '#lib/contracts/yard-moves.ts';
import { takeBackDelivery } from '#lib/services/yard/out/take-back-delivery.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, whySchema);
  if (!body.ok) return problem(body);
  return respond(takeBackDelivery(await asking(), { deliveryId: idOf((await params).id), ...body.value }));
}
