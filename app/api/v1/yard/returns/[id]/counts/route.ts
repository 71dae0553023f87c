import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { countBackSchema } from '#lib/contracts/yard-moves.ts';
import { countBack } from '#lib/services/yard/back/count-back.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, countBackSchema);
  if (!body.ok) return problem(body);
  return respond(countBack(await asking(), { returnId: idOf((await params).id), ...body.value }));
}
