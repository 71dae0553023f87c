import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { enquiryLifeSchema } from '#lib/contracts/enquiry-requests.ts';
import { changeEnquiryLife } from '#lib/services/enquiries/change-enquiry-life.ts';

export async function PATCH(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, enquiryLifeSchema);
  if (!body.ok) return problem(body);
  return respond(changeEnquiryLife(await asking(), { enquiryId: idOf((await params).id), ...body.value }));
}
