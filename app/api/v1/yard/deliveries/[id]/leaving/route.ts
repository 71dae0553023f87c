import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { leavingSchema } from '#lib/contracts/yard-moves.ts';
import { sendDelivery } from '#lib/services/yard/out/send-delivery.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, leavingSchema);
  if (!body.ok) return problem(body);
  return respond(sendDelivery(await asking(), { deliveryId: idOf((await params).id), ...body.value }));
}
