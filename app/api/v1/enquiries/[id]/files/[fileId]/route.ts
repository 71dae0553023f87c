import { asking } from '#app/_lib/asking.ts';
import type { FileParams } from '#app/_lib/list-choice.ts';
import { idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { putBackSchema } from '#lib/contracts/enquiry-requests.ts';
import { putFileAway, readAttachment } from '#lib/services/enquiries/attachments.ts';

/** The file as it came, byte for byte; a browser saves it and never runs it. */
export async function GET(_request: Request, { params }: FileParams): Promise<Response> {
  const { id, fileId } = await params;
  const file = readAttachment(await asking(), { enquiryId: idOf(id), fileId: idOf(fileId) });
  if (!file.ok) return problem(file);
  return new Response(new Uint8Array(file.value.bytes), {
    headers: {
      'content-type': 'application/octet-stream',
      'content-disposition': `attachment; filename*=UTF-8''${encodeURIComponent(file.value.fileName)}`,
      'x-content-type-options': 'nosniff',
      'content-security-policy': "sandbox; default-src 'none'",
    },
  });
}

export async function PATCH(request: Request, { params }: FileParams): Promise<Response> {
  const { id, fileId } = await params;
  const body = await readBody(request, putBackSchema);
  if (!body.ok) return problem(body);
  return respond(putFileAway(await asking(), { enquiryId: idOf(id), fileId: idOf(fileId), ...body.value }));
}
