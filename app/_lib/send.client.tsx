'use client';

import { SCREEN_HEADER, screenName } from './screen-name.ts';

export type Sent<Value> =
  | { readonly ok: true; readonly value: Value }
  | {
      readonly ok: false;
      readonly sentence: string;
      /** Whether the house gave an answer at all: what was refused is not sent again by itself. */
      readonly answered: boolean;
      /** Fields that are to be put right, where the refusal names them. */
      readonly problems: readonly FieldTrouble[];
    };

export interface FieldTrouble {
  readonly path: string;
  readonly sentence: string;
}

export interface Message {
  readonly method: 'GET' | 'POST' | 'PATCH' | 'DELETE';
  readonly path: string;
  readonly body?: unknown;
}

/** Calls the house’s own interface; a refusal or a lost connection comes back as a sentence. */
export async function send<Value = unknown>({ method, path, body }: Message): Promise<Sent<Value>> {
  try {
    const form = body instanceof FormData;
    const response = await fetch(path, {
      method,
      ...(body === undefined ? {} : { body: form ? body : JSON.stringify(body) }),
      headers: {
        [SCREEN_HEADER]: screenName(),
        ...(body === undefined || form ? {} : { 'content-type': 'application/json' }),
      },
    });
    const answer: unknown = await response.json().catch(() => null);
    if (response.ok) return { ok: true, value: answer as Value };
    return { ok: false, sentence: titleOf(answer), answered: response.status < 500, problems: problemsOf(answer) };
  } catch {
    return {
      ok: false,
      answered: false,
      problems: [],
      sentence: 'The house did not answer: check the connection and try again. Nothing you typed is lost.',
    };
  }
}

function titleOf(answer: unknown): string {
  if (answer !== null && typeof answer === 'object' && 'title' in answer && typeof answer.title === 'string')
    return answer.title;
  return 'The request was refused without a reason.';
}

function problemsOf(answer: unknown): readonly FieldTrouble[] {
  const listed = answer !== null && typeof answer === 'object' && 'problems' in answer ? answer.problems : undefined;
  return Array.isArray(listed) ? listed : [];
}
