import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { visitRowsSchema } from '#lib/contracts/visits.ts';
import { openVisits } from '#lib/services/visits/open-visits.ts';
import { recordVisits } from '#lib/services/visits/record-visits.ts';

export async function GET(_request: Request, { params }: EnquiryParams): Promise<Response> {
  return respond(openVisits(await asking(), idOf((await params).id)));
}

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, visitRowsSchema);
  if (!body.ok) return problem(body);
  return respond(recordVisits(await asking(), { enquiryId: idOf((await params).id), ...body.value }));
}
