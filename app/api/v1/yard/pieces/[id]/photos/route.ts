import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, respond } from '#app/_lib/respond.ts';
import { readUploadedPhoto } from '#app/_lib/uploaded-photo.ts';
import { addPhoto } from '#lib/services/yard/back/return-photos.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const context = await asking();
  const sent = await readUploadedPhoto(request);
  if (!sent.ok) return problem(sent);
  const { file, bytes } = sent.value;
  return respond(addPhoto(context, { pieceId: idOf((await params).id), fileName: file.name, bytes }), 201);
}
