import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { enquiryEditSchema } from '#lib/contracts/requests.ts';
import { changeEnquiry } from '#lib/services/enquiries/change-enquiry.ts';
import { openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';

export async function GET(_request: Request, { params }: EnquiryParams): Promise<Response> {
  return respond(openEnquiry(await asking(), idOf((await params).id)));
}

export async function PATCH(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, enquiryEditSchema);
  if (!body.ok) return problem(body);
  return respond(changeEnquiry(await asking(), { enquiryId: idOf((await params).id), ...body.value }));
}
