import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { stocktakeToOpenSchema } from '#lib/contracts/stock-requests.ts';
import { openStocktake } from '#lib/services/stock/open-stocktake.ts';

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, stocktakeToOpenSchema);
  return body.ok ? respond(openStocktake(await asking(), body.value), 201) : problem(body);
}
