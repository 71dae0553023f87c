import { asking } from '#app/_lib/asking.ts';
import { type OptionParams, optionKey } from '#app/_lib/option-key.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { priceChangeSchema } from '#lib/contracts/requests.ts';
import { changePrice, keepOption } from '#lib/services/quotes/change-price.ts';

export async function PATCH(request: Request, { params }: OptionParams): Promise<Response> {
  const body = await readBody(request, priceChangeSchema);
  if (!body.ok) return problem(body);
  return respond(changePrice(await asking(), { ...(await optionKey(params)), ...body.value }));
}

export async function DELETE(_request: Request, { params }: OptionParams): Promise<Response> {
  return respond(keepOption(await asking(), { ...(await optionKey(params)), keep: 'out' }));
}

/** Puts back an option that was taken out. */
export async function POST(_request: Request, { params }: OptionParams): Promise<Response> {
  return respond(keepOption(await asking(), { ...(await optionKey(params)), keep: 'back' }));
}
