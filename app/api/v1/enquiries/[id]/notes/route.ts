import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { noteTextSchema } from '#lib/contracts/enquiry-requests.ts';
import { addNote } from '#lib/services/enquiries/enquiry-notes.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, noteTextSchema);
  if (!body.ok) return problem(body);
  return respond(addNote(await asking(), { enquiryId: idOf((await params).id), ...body.value }), 201);
}
