import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { issueQuoteSchema } from '#lib/contracts/requests.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, issueQuoteSchema);
  if (!body.ok) return problem(body);
  return respond(await issueQuote(await asking(), { enquiryId: idOf((await params).id) }), 201);
}
