import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { visitUseSchema } from '#lib/contracts/visits.ts';
import { setVisitAside } from '#lib/services/visits/set-visit-aside.ts';

/** Whether a record of a visit may be used, with the reason where it may not. */
export async function PATCH(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, visitUseSchema);
  if (!body.ok) return problem(body);
  return respond(setVisitAside(await asking(), { visitId: idOf((await params).id), ...body.value }));
}
