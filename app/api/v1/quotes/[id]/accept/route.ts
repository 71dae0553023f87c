import { type EnquiryParams, idOf, respond } from '#app/_lib/respond.ts';
import { acceptQuote } from '#lib/services/accept-quote.ts';
import { openHouse } from '#lib/services/open-house.ts';

/** Pressing twice holds the units once: the second call answers with the booking that is there. */
export async function POST(_request: Request, { params }: EnquiryParams): Promise<Response> {
  return respond(acceptQuote(openHouse(), { quoteId: idOf((await params).id) }), 201);
}
