import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { namedLinesSchema } from '#lib/contracts/requests.ts';
import { readCells } from '#lib/services/schedule/list-lines.ts';

/** What the cells of lines say, without their duties. */
export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, namedLinesSchema);
  if (!body.ok) return problem(body);
  return respond(readCells(await asking(), { enquiryId: idOf((await params).id), ...body.value }));
}
