import { type EnquiryParams, idOf, problem, respond } from '#app/_lib/respond.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed } from '#lib/kernel/result.ts';
import { importVisits } from '#lib/services/import-visits.ts';
import { openHouse } from '#lib/services/open-house.ts';

const TOO_LARGE = failed({
  code: 'list-too-large',
  sentence: `A list may hold at most ${LIMITS.list_bytes / 1024 / 1024} MB; save it without pictures, or split it.`,
});

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  // The form around the file takes a little room of its own.
  if (Number(request.headers.get('content-length') ?? 0) > LIMITS.list_bytes + 65_536) return problem(TOO_LARGE);
  const form = await request.formData().catch(() => undefined);
  const file = form?.get('list');
  if (!(file instanceof File))
    return problem(failed({ code: 'list-missing', sentence: 'Choose a list first: a CSV, TSV or XLSX file.' }));
  if (file.size > LIMITS.list_bytes) return problem(TOO_LARGE);
  const bytes = new Uint8Array(await file.arrayBuffer());
  const enquiryId = idOf((await params).id);
  return respond(await importVisits(openHouse(), { enquiryId, fileName: file.name, bytes }));
}
