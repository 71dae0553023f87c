import { asking } from '#app/_lib/asking.ts';
import type { BookingParams } from '#app/_lib/booking-params.ts';
import { respond } from '#app/_lib/respond.ts';
import { finishPicking } from '#lib/services/yard/picking/finish-picking.ts';

export async function POST(_request: Request, { params }: BookingParams): Promise<Response> {
  return respond(finishPicking(await asking(), await params));
}
