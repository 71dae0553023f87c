import { headers } from 'next/headers';
import type { z } from 'zod';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, type Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { once } from '#lib/services/self-service/once.ts';
import { openKey } from '#lib/services/self-service/open-key.ts';
import { asked } from './asking.ts';
import { readBody } from './respond.ts';
import { addressAsking } from './session-cookie.ts';

export interface Program {
  readonly context: Context;
  readonly sent: { readonly token: string; readonly address: string };
}

/** A customer's program by the key that it sends; services behind this refuse whoever sends none. */
export async function programAsks(): Promise<Program> {
  const header = (await headers()).get('authorization') ?? '';
  const token = /^Bearer (kw_\S{1,100})$/i.exec(header)?.[1] ?? 'kw_';
  return { context: (await asked()).context, sent: { token, address: await addressAsking() } };
}

export interface OrderParams {
  readonly params: Promise<{ readonly id: string }>;
}

interface Changing<Schema extends z.ZodType, Value> {
  readonly program: Program;
  readonly request: Request;
  readonly schema: Schema;
  /** Which deed it is, so that one idempotency key serves one deed. */
  readonly deed: string;
  readonly run: (body: z.output<Schema>) => Promise<Result<Value>>;
}

/** Reads the body and carries the deed out once for its idempotency key; whoever sends no valid key is refused first. */
export async function changeOnce<Schema extends z.ZodType, Value>(
  changing: Changing<Schema, Value>,
): Promise<Result<Value>> {
  const { program, request, schema, deed, run } = changing;
  const key = openKey(program.context, program.sent);
  if (!key.ok) return key;
  if (Number(request.headers.get('content-length')) > LIMITS.self_service_file_bytes)
    return failed({ code: 'body-too-large', sentence: 'A request has 8 MB at most: send fewer valves at once.' });
  const body = await readBody(request, schema);
  if (!body.ok) return body;
  return once(program.context, {
    scope: `key ${key.value.id} ${deed}`,
    key: (await headers()).get('idempotency-key') ?? '',
    request: body.value,
    run: () => run(body.value),
  });
}
