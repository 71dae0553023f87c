import { changeOnce, type OrderParams, programAsks } from '#app/_lib/program.ts';
import { idOf, respond } from '#app/_lib/respond.ts';
import { handOverSchema } from '#lib/contracts/order-answers.ts';
import { ok } from '#lib/kernel/result.ts';
import { handOverOrder } from '#lib/services/self-service/hand-over-order.ts';

export async function POST(request: Request, { params }: OrderParams) {
  const program = await programAsks();
  const enquiryId = idOf((await params).id);
  const result = await changeOnce({
    program,
    request,
    schema: handOverSchema,
    deed: `hand-over ${enquiryId}`,
    run: async (body) => {
      const handed = handOverOrder(program.context, { ...program.sent, enquiryId, ...body });
      return handed.ok ? ok({ number: handed.value.number }) : handed;
    },
  });
  return respond(result);
}
