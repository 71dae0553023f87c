import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, respond } from '#app/_lib/respond.ts';
import { uploadedList } from '#app/_lib/uploaded-list.ts';
import { importVisits } from '#lib/services/visits/import-visits.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const list = await uploadedList(request);
  if (!list.ok) return problem(list);
  const enquiryId = idOf((await params).id);
  return respond(await importVisits(await asking(), { enquiryId, ...list.value }));
}
