import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';

/** The form around the picture takes a little room of its own. */
const FORM_BYTES = 65_536;

const TOO_LARGE = failed({
  code: 'photo-too-large',
  sentence: `A photograph may have at most ${LIMITS.photo_bytes / 1024 / 1024} MB; take a smaller one.`,
});

interface UploadedPhoto {
  readonly form: FormData;
  readonly file: File;
  readonly bytes: Uint8Array;
}

/** The field `file` of a form, refused before it is read where it is too large. */
export async function readUploadedPhoto(request: Request): Promise<Result<UploadedPhoto>> {
  if (Number(request.headers.get('content-length') ?? 0) > LIMITS.photo_bytes + FORM_BYTES) return TOO_LARGE;
  const form = await request.formData().catch(() => undefined);
  const file = form?.get('file');
  if (form === undefined || !(file instanceof File))
    return failed({ code: 'file-missing', sentence: 'Take or choose a photograph first.' });
  if (file.size > LIMITS.photo_bytes) return TOO_LARGE;
  return ok({ form, file, bytes: new Uint8Array(await file.arrayBuffer()) });
}
