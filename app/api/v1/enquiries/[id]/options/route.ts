import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { newOptionSchema } from '#lib/contracts/requests.ts';
import { addOption } from '#lib/services/quotes/change-price.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, newOptionSchema);
  if (!body.ok) return problem(body);
  return respond(addOption(await asking(), { enquiryId: idOf((await params).id), choices: body.value.choices }), 201);
}
