import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { putAwaySchema } from '#lib/contracts/customer-requests.ts';
import { putAway } from '#lib/services/customers/put-away.ts';

/** Puts a customer away, or brings it back. */
export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, putAwaySchema);
  if (!body.ok) return problem(body);
  return respond(putAway(await asking(), { kind: 'customer', id: idOf((await params).id), ...body.value }));
}
