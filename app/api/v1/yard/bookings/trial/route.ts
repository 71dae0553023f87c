import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { equipmentWantedSchema } from '#lib/contracts/booking-requests.ts';
import { tryBooking } from '#lib/services/yard/try-booking.ts';

/** Asks only; a long list of models does not fit into an address. */
export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, equipmentWantedSchema);
  return body.ok ? respond(tryBooking(await asking(), body.value)) : problem(body);
}
