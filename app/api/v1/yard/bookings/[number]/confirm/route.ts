import { asking } from '#app/_lib/asking.ts';
import type { BookingParams } from '#app/_lib/booking-params.ts';
import { respond } from '#app/_lib/respond.ts';
import { confirmBooking } from '#lib/services/yard/confirm-booking.ts';

export async function POST(_request: Request, { params }: BookingParams): Promise<Response> {
  return respond(confirmBooking(await asking(), await params));
}
