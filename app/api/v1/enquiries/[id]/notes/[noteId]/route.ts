import { asking } from '#app/_lib/asking.ts';
import { idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { noteTextSchema } from '#lib/contracts/enquiry-requests.ts';
import { changeNote } from '#lib/services/enquiries/enquiry-notes.ts';

interface NoteParams {
  readonly params: Promise<{ readonly id: string; readonly noteId: string }>;
}

export async function PATCH(request: Request, { params }: NoteParams): Promise<Response> {
  const { id, noteId } = await params;
  const body = await readBody(request, noteTextSchema);
  if (!body.ok) return problem(body);
  return respond(changeNote(await asking(), { enquiryId: idOf(id), noteId: idOf(noteId), ...body.value }));
}
