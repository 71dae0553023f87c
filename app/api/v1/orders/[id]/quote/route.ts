import { changeOnce, type OrderParams, programAsks } from '#app/_lib/program.ts';
import { idOf, respond } from '#app/_lib/respond.ts';
import { quoteAskedSchema } from '#lib/contracts/order-answers.ts';
import type { OrderContact } from '#lib/contracts/self-service.ts';
import { quoteOrder } from '#lib/services/self-service/quote-order.ts';

export async function POST(request: Request, { params }: OrderParams) {
  const program = await programAsks();
  const enquiryId = idOf((await params).id);
  const run = ({ contact }: { readonly contact: OrderContact }) =>
    quoteOrder(program.context, { ...program.sent, enquiryId, contact });
  return respond(await changeOnce({ program, request, schema: quoteAskedSchema, deed: `quote ${enquiryId}`, run }));
}
