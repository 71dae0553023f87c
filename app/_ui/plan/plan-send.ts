export type Sent = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly sentence: string };

/** Sends JSON to the house and answers its value, or the sentence it refused with. */
export async function send(request: {
  readonly path: string;
  readonly method: 'GET' | 'POST' | 'PATCH' | 'DELETE';
  readonly body?: unknown;
}): Promise<Sent> {
  try {
    const response = await fetch(request.path, {
      method: request.method,
      ...(request.body === undefined
        ? {}
        : { body: JSON.stringify(request.body), headers: { 'content-type': 'application/json' } }),
    });
    const value: unknown = await response.json().catch(() => null);
    if (response.ok) return { ok: true, value };
    return { ok: false, sentence: refusalIn(value) };
  } catch {
    return { ok: false, sentence: 'The house does not answer. Check that it is running, then try again.' };
  }
}

function refusalIn(value: unknown): string {
  if (value !== null && typeof value === 'object' && 'title' in value && typeof value.title === 'string') {
    return value.title;
  }
  return 'That did not work, and the house gave no reason. Try again.';
}
