import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';

/** Room beside a file for the other fields of its form. */
const OTHER_FIELDS_BYTES = 512 * 1024;

/** The form that was sent; what is too large is refused by its stated length, before it is read. */
export async function formIn(request: Request): Promise<Result<FormData>> {
  if (Number(request.headers.get('content-length')) > LIMITS.self_service_file_bytes + OTHER_FIELDS_BYTES)
    return failed({ code: 'file-too-large', sentence: 'That is too large: 8 MB at most.' });
  try {
    return ok(await request.formData());
  } catch {
    return failed({ code: 'form-unreadable', sentence: 'The form cannot be read: send it again.' });
  }
}

/** The texts of a form by their names; files are left out, and no text is longer than a cell may be. */
export function textsIn(form: FormData): Readonly<Record<string, string>> {
  const entries = [...form.entries()].flatMap(([name, value]) =>
    typeof value === 'string' ? [[name, value.slice(0, LIMITS.cell_characters)] as const] : [],
  );
  return Object.fromEntries(entries);
}

export interface SentFile {
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

/** The list that was chosen or pasted; null where there is neither. */
export async function listIn(form: FormData): Promise<SentFile | null> {
  const chosen = await fileIn(form, 'list');
  if (chosen !== null) return chosen;
  const pasted = form.get('rows');
  if (typeof pasted !== 'string' || pasted.trim() === '') return null;
  return { fileName: 'pasted.csv', bytes: new TextEncoder().encode(pasted) };
}

export async function fileIn(form: FormData, name: string): Promise<SentFile | null> {
  const value = form.get(name);
  if (value === null || typeof value === 'string' || value.size === 0) return null;
  // What is longer is refused by its length, without being read.
  const part = value.slice(0, LIMITS.self_service_file_bytes + 1);
  return { fileName: value.name, bytes: new Uint8Array(await part.arrayBuffer()) };
}
