import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, respond } from '#app/_lib/respond.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed } from '#lib/kernel/result.ts';
import { attachFile } from '#lib/services/enquiries/attachments.ts';

/** The form around the file takes a little room of its own. */
const FORM_BYTES = 65_536;

const TOO_LARGE = failed({
  code: 'file-too-large',
  sentence: `A file may have at most ${LIMITS.attachment_bytes / 1024 / 1024} MB; make it smaller or split it.`,
});

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const context = await asking();
  if (Number(request.headers.get('content-length') ?? 0) > LIMITS.attachment_bytes + FORM_BYTES)
    return problem(TOO_LARGE);
  const form = await request.formData().catch(() => undefined);
  const file = form?.get('file');
  if (!(file instanceof File)) return problem(failed({ code: 'file-missing', sentence: 'Choose a file first.' }));
  if (file.size > LIMITS.attachment_bytes) return problem(TOO_LARGE);
  const bytes = new Uint8Array(await file.arrayBuffer());
  return respond(attachFile(context, { enquiryId: idOf((await params).id), fileName: file.name, bytes }), 201);
}
