import { changeOnce, type OrderParams, programAsks } from '#app/_lib/program.ts';
import { idOf, respond } from '#app/_lib/respond.ts';
import { acceptanceSchema, type OrderAcceptance } from '#lib/contracts/self-service.ts';
import { acceptOrder } from '#lib/services/self-service/accept-order.ts';

export async function POST(request: Request, { params }: OrderParams) {
  const program = await programAsks();
  const enquiryId = idOf((await params).id);
  const run = async (acceptance: OrderAcceptance) =>
    acceptOrder(program.context, { ...program.sent, enquiryId, acceptance });
  return respond(await changeOnce({ program, request, schema: acceptanceSchema, deed: `accept ${enquiryId}`, run }));
}
