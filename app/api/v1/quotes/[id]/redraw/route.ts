import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, respond } from '#app/_lib/respond.ts';
import { redrawQuote } from '#lib/services/quotes/redraw-quote.ts';

/** Writes nothing, but draws everything again, so it is asked for and not followed as a link. */
export async function POST(_request: Request, { params }: EnquiryParams): Promise<Response> {
  return respond(await redrawQuote(await asking(), { quoteId: idOf((await params).id) }));
}
