import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { countToSetSchema } from '#lib/contracts/stock-requests.ts';
import { setCount } from '#lib/services/stock/counted.ts';

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, countToSetSchema);
  return body.ok ? respond(setCount(await asking(), body.value)) : problem(body);
}
