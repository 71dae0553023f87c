import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, respond } from '#app/_lib/respond.ts';
import { uploadedList } from '#app/_lib/uploaded-list.ts';
import { receiveList } from '#lib/services/schedule/receive-list.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const list = await uploadedList(request);
  if (!list.ok) return problem(list);
  const enquiryId = idOf((await params).id);
  return respond(await receiveList(await asking(), { enquiryId, ...list.value }), 201);
}
