import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { contactEditSchema } from '#lib/contracts/customer-requests.ts';
import { changeContact } from '#lib/services/customers/save-contact.ts';

export async function PATCH(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, contactEditSchema);
  if (!body.ok) return problem(body);
  return respond(changeContact(await asking(), { contactId: idOf((await params).id), ...body.value }));
}
