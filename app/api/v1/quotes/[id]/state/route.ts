import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { quoteMoveSchema } from '#lib/contracts/requests.ts';
import { setQuoteState } from '#lib/services/quotes/set-quote-state.ts';

export async function PATCH(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, quoteMoveSchema);
  if (!body.ok) return problem(body);
  return respond(setQuoteState(await asking(), { quoteId: idOf((await params).id), ...body.value }));
}
