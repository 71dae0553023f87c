import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, respond } from '#app/_lib/respond.ts';
import { filterFromQuery } from '#lib/schedule/line-filter.ts';
import { orderLines } from '#lib/services/schedule/order-lines.ts';

/** The ids of the lines that a filter lets through, in their order. */
export async function GET(request: Request, { params }: EnquiryParams): Promise<Response> {
  const filter = filterFromQuery(new URL(request.url).searchParams);
  return respond(await orderLines(await asking(), { enquiryId: idOf((await params).id), filter }));
}
