import { asking } from '#app/_lib/asking.ts';
import { pageOf } from '#app/_lib/enquiry-list-address.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { customerEntrySchema } from '#lib/contracts/customer-requests.ts';
import { findCustomers } from '#lib/services/customers/find-customers.ts';
import { createCustomer } from '#lib/services/customers/save-customer.ts';

export async function GET(request: Request): Promise<Response> {
  const { searchParams } = new URL(request.url);
  const archived = searchParams.get('archived') === 'yes' ? 'yes' : 'no';
  const words = searchParams.get('q') ?? '';
  return respond(findCustomers(await asking(), { words, archived, page: pageOf(searchParams.get('page')) }));
}

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, customerEntrySchema);
  if (!body.ok) return problem(body);
  return respond(createCustomer(await asking(), body.value), 201);
}
