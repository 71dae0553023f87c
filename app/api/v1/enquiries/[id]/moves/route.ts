import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { enquiryMoveSchema } from '#lib/contracts/enquiry-requests.ts';
import { moveEnquiry } from '#lib/services/enquiries/move-enquiry.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, enquiryMoveSchema);
  if (!body.ok) return problem(body);
  return respond(moveEnquiry(await asking(), { enquiryId: idOf((await params).id), ...body.value }));
}
