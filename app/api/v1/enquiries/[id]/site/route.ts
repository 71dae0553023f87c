import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { enquirySiteSchema } from '#lib/contracts/enquiry-requests.ts';
import { linkSite } from '#lib/services/customers/link-site.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, enquirySiteSchema);
  if (!body.ok) return problem(body);
  return respond(linkSite(await asking(), { enquiryId: idOf((await params).id), ...body.value }));
}
