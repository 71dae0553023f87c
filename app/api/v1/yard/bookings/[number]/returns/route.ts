import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import type { BookingParams } from '#app/_lib/yard-params.ts';
import { declarationSchema } from '#lib/contracts/yard-moves.ts';
import { openReturn } from '#lib/services/yard/back/open-return.ts';

export async function POST(request: Request, { params }: BookingParams): Promise<Response> {
  const body = await readBody(request, declarationSchema);
  if (!body.ok) return problem(body);
  return respond(openReturn(await asking(), { number: (await params).number, ...body.value }), 201);
}
