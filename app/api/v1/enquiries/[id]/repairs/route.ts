import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { repairSchema } from '#lib/contracts/requests.ts';
import { applyRepair } from '#lib/services/lines/apply-repair.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, repairSchema);
  if (!body.ok) return problem(body);
  return respond(applyRepair(await asking(), { enquiryId: idOf((await params).id), ...body.value }));
}
