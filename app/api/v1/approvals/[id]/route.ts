import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { approvalDecisionSchema } from '#lib/contracts/requests.ts';
import { decideDiscount } from '#lib/services/quotes/decide-discount.ts';

export async function PATCH(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, approvalDecisionSchema);
  if (!body.ok) return problem(body);
  return respond(decideDiscount(await asking(), { approvalId: idOf((await params).id), ...body.value }));
}
