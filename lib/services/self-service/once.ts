/*
 * Carries a request out once, however often it is sent under the same key.
 * Invariant: the first answer is kept for a day and given again; the same key with another request is refused.
 * Not here: what the request does.
 * Read next: ../../../db/schema/kept-answer.ts.
 */
import { findKeptAnswer, forgetKeptAnswers, insertKeptAnswer } from '#db/queries/api-keys.ts';
import { failed, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { sha256 } from '#lib/services/sha256.ts';

const KEPT_MS = 24 * 60 * 60_000;
const KEY_CHARACTERS = 200;

declare global {
  var kitwrightOnce: Map<string, Promise<unknown>> | undefined;
}

export interface OnceAsked<Value> {
  /** Who sends: a key or a link. */
  readonly scope: string;
  /** As the sender chose it; empty where none was sent, and then nothing is kept. */
  readonly key: string;
  readonly request: unknown;
  readonly run: () => Promise<Result<Value>>;
}

export async function once<Value>(context: Context, asked: OnceAsked<Value>): Promise<Result<Value>> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const { scope, key, run } = asked;
  if (key === '') return run();
  if (key.length > KEY_CHARACTERS)
    return failed({ code: 'key-too-long', sentence: `An idempotency key has at most ${KEY_CHARACTERS} characters.` });
  globalThis.kitwrightOnce ??= new Map();
  const running = globalThis.kitwrightOnce;
  const name = `${scope} ${key}`;
  // Nothing is awaited between looking and beginning, so that of several at once only one begins.
  for (let other = running.get(name); other !== undefined; other = running.get(name))
    await other.catch(() => undefined);
  const before = keptBefore(context, asked);
  if (before !== null) return before;
  const doing = carryOut(context, asked).finally(() => running.delete(name));
  running.set(name, doing);
  return doing;
}

async function carryOut<Value>(context: Context, asked: OnceAsked<Value>): Promise<Result<Value>> {
  const result = await asked.run();
  keep(context, { asked, result });
  return result;
}

function keptBefore<Value>(context: Context, { scope, key, request }: OnceAsked<Value>): Result<Value> | null {
  const row = findKeptAnswer(context.database.db, { scope, key });
  if (row === undefined) return null;
  if (row.request_hash !== hashOf(request))
    return failed({
      code: 'key-used-before',
      sentence: 'This idempotency key was sent with another request before: choose a new key for a new request.',
    });
  return JSON.parse(row.answer_json) as Result<Value>;
}

/** A refusal is not kept: the sender puts right what was wrong and sends again. */
function keep<Value>(
  context: Context,
  { asked, result }: { readonly asked: OnceAsked<Value>; readonly result: Result<Value> },
): void {
  if (!result.ok) return;
  const { db } = context.database;
  const at = timestamp(context);
  forgetKeptAnswers(db, new Date(context.now().getTime() - KEPT_MS).toISOString());
  insertKeptAnswer(db, {
    scope: asked.scope,
    key: asked.key,
    request_hash: hashOf(asked.request),
    answer_json: JSON.stringify(result),
    at,
  });
}

function hashOf(request: unknown): string {
  return sha256(JSON.stringify(request));
}
