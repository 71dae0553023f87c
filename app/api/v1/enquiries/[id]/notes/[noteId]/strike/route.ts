import { asking } from '#app/_lib/asking.ts';
import { idOf, respond } from '#app/_lib/respond.ts';
import { strikeNote } from '#lib/services/enquiries/enquiry-notes.ts';

interface NoteParams {
  readonly params: Promise<{ readonly id: string; readonly noteId: string }>;
}

/** Strikes a note through; a second time takes that back. */
export async function POST(_request: Request, { params }: NoteParams): Promise<Response> {
  const { id, noteId } = await params;
  return respond(strikeNote(await asking(), { enquiryId: idOf(id), noteId: idOf(noteId) }));
}
