import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import type { BookingParams } from '#app/_lib/yard-params.ts';
import { causeSchema } from '#lib/contracts/yard-moves.ts';
import { sayCause } from '#lib/services/yard/back/say-cause.ts';

export async function POST(request: Request, { params }: BookingParams): Promise<Response> {
  const body = await readBody(request, causeSchema);
  if (!body.ok) return problem(body);
  return respond(sayCause(await asking(), { number: (await params).number, ...body.value }));
}
