import type { z } from 'zod';
import { changeOnce, type OrderParams, programAsks } from '#app/_lib/program.ts';
import { idOf, respond } from '#app/_lib/respond.ts';
import { offHireSchema } from '#lib/contracts/order-hire.ts';
import { programOffHire } from '#lib/services/self-service/program-hire.ts';

export async function POST(request: Request, { params }: OrderParams) {
  const program = await programAsks();
  const enquiryId = idOf((await params).id);
  const run = async (off: z.infer<typeof offHireSchema>) =>
    programOffHire(program.context, { ...program.sent, enquiryId, ...off });
  return respond(await changeOnce({ program, request, schema: offHireSchema, deed: `off-hire ${enquiryId}`, run }));
}
