import { asking } from '#app/_lib/asking.ts';
import { type OptionParams, optionKey } from '#app/_lib/option-key.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { approvalRequestSchema } from '#lib/contracts/requests.ts';
import { askForDiscount } from '#lib/services/quotes/decide-discount.ts';

export async function POST(request: Request, { params }: OptionParams): Promise<Response> {
  const body = await readBody(request, approvalRequestSchema);
  if (!body.ok) return problem(body);
  return respond(askForDiscount(await asking(), { ...(await optionKey(params)), ...body.value }), 201);
}
