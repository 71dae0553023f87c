import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { pieceSeenSchema } from '#lib/contracts/yard-moves.ts';
import { checkIn } from '#lib/services/yard/back/check-in.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, pieceSeenSchema);
  if (!body.ok) return problem(body);
  return respond(checkIn(await asking(), { returnId: idOf((await params).id), ...body.value }), 201);
}
