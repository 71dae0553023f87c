import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { contactEntrySchema } from '#lib/contracts/customer-requests.ts';
import { createContact } from '#lib/services/customers/save-contact.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, contactEntrySchema);
  if (!body.ok) return problem(body);
  return respond(createContact(await asking(), { customerId: idOf((await params).id), ...body.value }), 201);
}
