import { asking } from '#app/_lib/asking.ts';
import { file, problem } from '#app/_lib/respond.ts';
import { readReturnNote } from '#lib/services/yard/back/read-return-note.ts';

export async function GET(
  _request: Request,
  { params }: { readonly params: Promise<{ readonly note: string }> },
): Promise<Response> {
  const note = readReturnNote(await asking(), (await params).note);
  return note.ok ? file(note.value) : problem(note);
}
