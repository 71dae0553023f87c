import { asking } from '#app/_lib/asking.ts';
import type { FileParams } from '#app/_lib/list-choice.ts';
import { idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { comparisonChoiceSchema } from '#lib/contracts/requests.ts';
import { checkMapping } from '#lib/services/schedule/check-mapping.ts';
import { takeCompared } from '#lib/services/schedule/compare-list.ts';

/** Takes what was chosen of a changed list, in one step that can be taken back. */
export async function POST(request: Request, { params }: FileParams): Promise<Response> {
  const { id, fileId } = await params;
  const body = await readBody(request, comparisonChoiceSchema);
  if (!body.ok) return problem(body);
  const mapping = checkMapping(body.value.mapping);
  if (!mapping.ok) return problem(mapping);
  const choice = { ...body.value, mapping: mapping.value, enquiryId: idOf(id), fileId: idOf(fileId) };
  return respond(await takeCompared(await asking(), choice));
}
