import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { acceptanceSchema } from '#lib/contracts/requests.ts';
import { acceptQuote } from '#lib/services/quotes/accept-quote.ts';

/** Pressing twice holds the units once: the second call answers with the booking that is there. */
export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, acceptanceSchema);
  if (!body.ok) return problem(body);
  const { option, ...said } = body.value;
  const acceptance = { quoteId: idOf((await params).id), ...said, ...(option === undefined ? {} : { option }) };
  return respond(acceptQuote(await asking(), acceptance), 201);
}
