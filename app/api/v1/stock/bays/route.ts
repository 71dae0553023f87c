import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { bayToSaveSchema } from '#lib/contracts/stock-requests.ts';
import { saveHouseBay } from '#lib/services/stock/bays.ts';

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, bayToSaveSchema);
  return body.ok ? respond(saveHouseBay(await asking(), body.value)) : problem(body);
}
