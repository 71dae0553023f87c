import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { whySchema } from '#lib/contracts/yard-moves.ts';
import { undoCheckIn } from '#lib/services/yard/back/undo-check-in.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, whySchema);
  if (!body.ok) return problem(body);
  return respond(undoCheckIn(await asking(), { pieceId: idOf((await params).id), ...body.value }));
}
