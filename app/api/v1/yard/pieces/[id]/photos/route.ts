import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, respond } from '#app/_lib/respond.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed } from '#lib/kernel/result.ts';
import { addPhoto } from '#lib/services/yard/back/return-photos.ts';

/** The form around the picture takes a little room of its own. */
const FORM_BYTES = 65_536;

const TOO_LARGE = failed({
  code: 'photo-too-large',
  sentence: `A photograph may have at most ${LIMITS.photo_bytes / 1024 / 1024} MB; take a smaller one.`,
});

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const context = await asking();
  if (Number(request.headers.get('content-length') ?? 0) > LIMITS.photo_bytes + FORM_BYTES) return problem(TOO_LARGE);
  const form = await request.formData().catch(() => undefined);
  const photo = form?.get('file');
  if (!(photo instanceof File))
    return problem(failed({ code: 'file-missing', sentence: 'Take or choose a photograph first.' }));
  if (photo.size > LIMITS.photo_bytes) return problem(TOO_LARGE);
  const bytes = new Uint8Array(await photo.arrayBuffer());
  return respond(addPhoto(context, { pieceId: idOf((await params).id), fileName: photo.name, bytes }), 201);
}
