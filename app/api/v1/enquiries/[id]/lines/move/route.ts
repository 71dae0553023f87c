import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { movedLinesSchema } from '#lib/contracts/requests.ts';
import { moveLines } from '#lib/services/schedule/change-lines.ts';

/** Gives lines another place in the list. */
export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, movedLinesSchema);
  if (!body.ok) return problem(body);
  return respond(moveLines(await asking(), { enquiryId: idOf((await params).id), ...body.value }));
}
