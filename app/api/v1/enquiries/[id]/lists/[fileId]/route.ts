import { asking } from '#app/_lib/asking.ts';
import { type FileParams, listChoice } from '#app/_lib/list-choice.ts';
import { idOf, problem, respond } from '#app/_lib/respond.ts';
import { readList } from '#lib/services/schedule/read-list.ts';
import { takeList } from '#lib/services/schedule/take-list.ts';

/** The file as it was received, byte for byte. */
export async function GET(_request: Request, { params }: FileParams): Promise<Response> {
  const { id, fileId } = await params;
  const file = readList(await asking(), { enquiryId: idOf(id), fileId: idOf(fileId) });
  if (!file.ok) return problem(file);
  return new Response(new Uint8Array(file.value.bytes), {
    headers: {
      'content-type': 'application/octet-stream',
      'content-disposition': `attachment; filename*=UTF-8''${encodeURIComponent(file.value.fileName)}`,
    },
  });
}

/** Takes the lines with the mapping as confirmed. */
export async function POST(request: Request, { params }: FileParams): Promise<Response> {
  const choice = await listChoice(request, params);
  if (!choice.ok) return problem(choice);
  return respond(await takeList(await asking(), choice.value), 201);
}
