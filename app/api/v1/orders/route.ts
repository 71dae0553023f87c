import { changeOnce, programAsks } from '#app/_lib/program.ts';
import { respond } from '#app/_lib/respond.ts';
import { newOrderSchema } from '#lib/contracts/self-service.ts';
import { newProgramOrder } from '#lib/services/self-service/program-orders.ts';

export async function POST(request: Request) {
  const program = await programAsks();
  const { context, sent } = program;
  const run = (order: Parameters<typeof newProgramOrder>[1]['order']) => newProgramOrder(context, { ...sent, order });
  return respond(await changeOnce({ program, request, schema: newOrderSchema, deed: 'order', run }), 201);
}
