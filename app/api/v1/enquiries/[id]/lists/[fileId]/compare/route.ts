import { asking } from '#app/_lib/asking.ts';
import { type FileParams, listChoice } from '#app/_lib/list-choice.ts';
import { problem, respond } from '#app/_lib/respond.ts';
import { compareList } from '#lib/services/schedule/compare-list.ts';

/** The list beside the schedule: what came, what is gone, what says something else. Nothing is stored. */
export async function POST(request: Request, { params }: FileParams): Promise<Response> {
  const choice = await listChoice(request, params);
  if (!choice.ok) return problem(choice);
  return respond(await compareList(await asking(), choice.value));
}
