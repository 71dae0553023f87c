import type { z } from 'zod';
import { type Failed, failed, ok, type Refused, type Result } from '#lib/kernel/result.ts';

/** HTTP status of a refusal by its code; anything else that the domain refuses is 422. */
const STATUS: Readonly<Record<string, number>> = {
  'not-signed-in': 401,
  'no-key': 401,
  'link-expired': 410,
  'link-withdrawn': 410,
  'link-only-looks': 403,
  'key-used-before': 409,
  'order-with-desk': 409,
  'order-accepted': 409,
  'not-firm': 409,
  'not-on-hire': 409,
  'not-to-extend': 409,
  'equipment-taken': 409,
  busy: 503,
  'not-allowed': 403,
  'password-to-choose': 403,
  'too-many-tries': 429,
  'changed-meanwhile': 409,
  'plan-not-current': 409,
  'body-unreadable': 400,
  'file-too-large': 413,
  'body-too-large': 413,
};

/** Answers JSON, or a problem document (RFC 9457) that carries the stable code and the sentence for the user. */
export function respond<Value>(result: Result<Value>, status = 200): Response {
  if (result.ok) return Response.json(result.value, { status });
  return problem(result);
}

export function statusOf(code: string): number {
  return STATUS[code] ?? (code.startsWith('no-such-') ? 404 : 422);
}

export function problem({ reason }: Failed<Refused>): Response {
  const status = statusOf(reason.code);
  const wait = secondsToWait(reason);
  return Response.json(
    {
      type: `/problems/${reason.code}`,
      title: reason.sentence,
      status,
      code: reason.code,
      // Single fields that are to be put right, where the refusal names them.
      ...('problems' in reason ? { problems: reason.problems } : {}),
    },
    {
      status,
      headers: {
        'content-type': 'application/problem+json',
        ...(wait === undefined ? {} : { 'retry-after': String(wait) }),
      },
    },
  );
}

/** Where the refusal says after how many seconds it is worth asking again. */
export function secondsToWait(reason: Refused): number | undefined {
  if ('retry_after_s' in reason && typeof reason.retry_after_s === 'number') return reason.retry_after_s;
  return reason.code === 'busy' ? BUSY_S : undefined;
}

const BUSY_S = 20;

/** Reads and checks a JSON body; says which field is wrong and how. */
export async function readBody<Schema extends z.ZodType>(
  request: Request,
  schema: Schema,
): Promise<Result<z.output<Schema>>> {
  const json = await readJson(request);
  if (!json.ok) return json;
  const parsed = schema.safeParse(json.value);
  if (parsed.success) return ok(parsed.data);
  const issue = parsed.error.issues[0];
  const where = issue && issue.path.length > 0 ? ` at ${issue.path.map(String).join('.')}` : '';
  return failed({
    code: 'body-invalid',
    sentence: `The request is not as expected${where}: ${issue?.message ?? 'unknown'}.`,
  });
}

async function readJson(request: Request): Promise<Result<unknown>> {
  try {
    return ok(await request.json());
  } catch {
    return failed({ code: 'body-unreadable', sentence: 'The request body is not JSON.' });
  }
}

export interface EnquiryParams {
  readonly params: Promise<{ readonly id: string }>;
}

/** A path's id as a number; anything else names no enquiry, line or quote. */
export function idOf(text: string): number {
  return /^\d{1,15}$/.test(text) ? Number(text) : 0;
}

interface FileToSend {
  readonly fileName: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
}

/** Papers and texts open beside the page; what another program reads is saved. */
export function file({ fileName, mime, bytes }: FileToSend): Response {
  const place = mime === 'application/pdf' || mime.startsWith('text/plain') ? 'inline' : 'attachment';
  return new Response(new Uint8Array(bytes), {
    headers: { 'content-type': mime, 'content-disposition': `${place}; filename="${fileName}"` },
  });
}
