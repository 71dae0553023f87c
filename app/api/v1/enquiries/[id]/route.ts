import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { enquiryEditSchema } from '#lib/contracts/requests.ts';
import { changeEnquiry } from '#lib/services/change-enquiry.ts';
import { openEnquiry } from '#lib/services/open-enquiry.ts';
import { openHouse } from '#lib/services/open-house.ts';

export async function GET(_request: Request, { params }: EnquiryParams): Promise<Response> {
  return respond(openEnquiry(openHouse(), idOf((await params).id)));
}

export async function PATCH(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, enquiryEditSchema);
  if (!body.ok) return problem(body);
  return respond(changeEnquiry(openHouse(), { enquiryId: idOf((await params).id), ...body.value }));
}
