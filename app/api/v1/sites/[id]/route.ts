import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { siteRecordEditSchema } from '#lib/contracts/customer-requests.ts';
import { changeSite } from '#lib/services/customers/save-site.ts';

export async function PATCH(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, siteRecordEditSchema);
  if (!body.ok) return problem(body);
  return respond(changeSite(await asking(), { siteId: idOf((await params).id), ...body.value }));
}
