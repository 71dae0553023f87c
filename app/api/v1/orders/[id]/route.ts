import { type OrderParams, programAsks } from '#app/_lib/program.ts';
import { idOf, respond } from '#app/_lib/respond.ts';
import { programOrder } from '#lib/services/self-service/program-orders.ts';

export async function GET(_request: Request, { params }: OrderParams) {
  const { context, sent } = await programAsks();
  return respond(await programOrder(context, { ...sent, enquiryId: idOf((await params).id) }));
}
