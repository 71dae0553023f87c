import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';

const TOO_LARGE = failed({
  code: 'list-too-large',
  sentence: `A list may hold at most ${LIMITS.list_bytes / 1024 / 1024} MB; save it without pictures, or split it.`,
});

/** The form around the file takes a little room of its own. */
const FORM_BYTES = 65_536;

interface UploadedList {
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

/** The list that a form sends along, refused when it is missing or too large. */
export async function uploadedList(request: Request): Promise<Result<UploadedList>> {
  if (Number(request.headers.get('content-length') ?? 0) > LIMITS.list_bytes + FORM_BYTES) return TOO_LARGE;
  const form = await request.formData().catch(() => undefined);
  const file = form?.get('list');
  if (!(file instanceof File))
    return failed({ code: 'list-missing', sentence: 'Choose a list first: a CSV, TSV or XLSX file.' });
  if (file.size > LIMITS.list_bytes) return TOO_LARGE;
  return ok({ fileName: file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
}
