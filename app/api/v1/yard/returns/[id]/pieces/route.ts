import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { pieceSeenSchema } from '#lib/contracts/yard-moves.ts';
import { checkIn } from '#lib/services/yard/back/check-in.ts';
import { lookAtPiece } from '#lib/services/yard/back/look-at-piece.ts';

/** What a scan means, before anything is written. */
export async function GET(request: Request, { params }: EnquiryParams): Promise<Response> {
  const scan = new URL(request.url).searchParams.get('scan') ?? '';
  return respond(lookAtPiece(await asking(), { returnId: idOf((await params).id), scan }));
}

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, pieceSeenSchema);
  if (!body.ok) return problem(body);
  return respond(checkIn(await asking(), { returnId: idOf((await params).id), ...body.value }), 201);
}
