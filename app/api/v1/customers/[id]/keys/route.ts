import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, readBody, respond } from '#app/_lib/respond.ts';
import { newKeySchema } from '#lib/contracts/self-service.ts';
import { makeKey } from '#lib/services/self-service/open-key.ts';

export async function POST(request: Request, { params }: EnquiryParams) {
  const context = await asking();
  const body = await readBody(request, newKeySchema);
  if (!body.ok) return respond(body);
  return respond(makeKey(context, { customerId: idOf((await params).id), name: body.value.name }), 201);
}
