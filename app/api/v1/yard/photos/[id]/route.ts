import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { photoRemovedSchema } from '#lib/contracts/yard-moves.ts';
import { readPhoto, removePhoto } from '#lib/services/yard/back/return-photos.ts';

/** The picture as it came; its kind was proved by its first bytes when it was kept. */
export async function GET(_request: Request, { params }: EnquiryParams): Promise<Response> {
  const photo = readPhoto(await asking(), idOf((await params).id));
  if (!photo.ok) return problem(photo);
  return new Response(new Uint8Array(photo.value.bytes), {
    headers: {
      'content-type': photo.value.mime,
      'content-disposition': 'inline',
      'x-content-type-options': 'nosniff',
      'content-security-policy': "sandbox; default-src 'none'",
    },
  });
}

export async function PATCH(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, photoRemovedSchema);
  if (!body.ok) return problem(body);
  return respond(removePhoto(await asking(), { photoId: idOf((await params).id), ...body.value }));
}
