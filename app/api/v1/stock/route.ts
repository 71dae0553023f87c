import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { unitToAddSchema } from '#lib/contracts/stock-requests.ts';
import { addUnit } from '#lib/services/stock/add-unit.ts';

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, unitToAddSchema);
  return body.ok ? respond(addUnit(await asking(), body.value), 201) : problem(body);
}
