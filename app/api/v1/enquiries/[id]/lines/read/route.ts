import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { namedLinesSchema } from '#lib/contracts/requests.ts';
import { readLines } from '#lib/services/schedule/list-lines.ts';

/** Lines by their ids, each with its duty; the ids may be too many for an address. */
export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, namedLinesSchema);
  if (!body.ok) return problem(body);
  return respond(await readLines(await asking(), { enquiryId: idOf((await params).id), ...body.value }));
}
