import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { bulkEditSchema } from '#lib/contracts/requests.ts';
import { bulkEdit } from '#lib/services/schedule/bulk-edit.ts';

/** Writes one column of many lines, marks it, or replaces a text wherever it stands. */
export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, bulkEditSchema);
  if (!body.ok) return problem(body);
  return respond(bulkEdit(await asking(), { enquiryId: idOf((await params).id), ...body.value }));
}
