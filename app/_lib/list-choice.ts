import { idOf, readBody } from '#app/_lib/respond.ts';
import { listChoiceSchema } from '#lib/contracts/requests.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { checkMapping } from '#lib/services/schedule/check-mapping.ts';
import type { TakeListChoice } from '#lib/services/schedule/take-list.ts';

export interface FileParams {
  readonly params: Promise<{ readonly id: string; readonly fileId: string }>;
}

/** Reads which sheet and mapping were chosen, and checks that every column named exists. */
export async function listChoice(request: Request, params: FileParams['params']): Promise<Result<TakeListChoice>> {
  const { id, fileId } = await params;
  const body = await readBody(request, listChoiceSchema);
  if (!body.ok) return body;
  const mapping = checkMapping(body.value.mapping);
  if (!mapping.ok) return mapping;
  return ok({ ...body.value, mapping: mapping.value, enquiryId: idOf(id), fileId: idOf(fileId) });
}
