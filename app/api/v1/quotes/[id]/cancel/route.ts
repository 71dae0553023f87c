import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { cancellationSchema } from '#lib/contracts/requests.ts';
import { cancelAcceptance } from '#lib/services/quotes/cancel-acceptance.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, cancellationSchema);
  if (!body.ok) return problem(body);
  return respond(cancelAcceptance(await asking(), { quoteId: idOf((await params).id), ...body.value }));
}
