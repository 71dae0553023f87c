import { asking } from '#app/_lib/asking.ts';
import { type FileParams, listChoice } from '#app/_lib/list-choice.ts';
import { problem, respond } from '#app/_lib/respond.ts';
import { previewList } from '#lib/services/schedule/take-list.ts';

export async function POST(request: Request, { params }: FileParams): Promise<Response> {
  const choice = await listChoice(request, params);
  if (!choice.ok) return problem(choice);
  return respond(await previewList(await asking(), choice.value));
}
