import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { workByHandSchema } from '#lib/contracts/yard-moves.ts';
import { openWorkOrder } from '#lib/services/yard/work/open-work-order.ts';

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, workByHandSchema);
  if (!body.ok) return problem(body);
  return respond(openWorkOrder(await asking(), body.value), 201);
}
