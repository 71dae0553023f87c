import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { equipmentToBookSchema } from '#lib/contracts/booking-requests.ts';
import { bookEquipment } from '#lib/services/yard/book-equipment.ts';

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, equipmentToBookSchema);
  return body.ok ? respond(bookEquipment(await asking(), body.value), 201) : problem(body);
}
