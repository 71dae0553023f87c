import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { customerEditSchema } from '#lib/contracts/customer-requests.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { changeCustomer } from '#lib/services/customers/save-customer.ts';

export async function GET(_request: Request, { params }: EnquiryParams): Promise<Response> {
  return respond(openCustomer(await asking(), idOf((await params).id)));
}

export async function PATCH(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, customerEditSchema);
  if (!body.ok) return problem(body);
  return respond(changeCustomer(await asking(), { customerId: idOf((await params).id), ...body.value }));
}
