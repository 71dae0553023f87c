import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { siteEntrySchema } from '#lib/contracts/customer-requests.ts';
import { createSite } from '#lib/services/customers/save-site.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, siteEntrySchema);
  if (!body.ok) return problem(body);
  return respond(createSite(await asking(), { customerId: idOf((await params).id), ...body.value }), 201);
}
