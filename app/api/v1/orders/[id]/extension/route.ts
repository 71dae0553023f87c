import type { z } from 'zod';
import { changeOnce, type OrderParams, programAsks } from '#app/_lib/program.ts';
import { idOf, respond } from '#app/_lib/respond.ts';
import { extensionSchema } from '#lib/contracts/order-hire.ts';
import { programExtension, programExtensionTried } from '#lib/services/self-service/program-hire.ts';

/** What it would cost. */
export async function GET(request: Request, { params }: OrderParams) {
  const { context, sent } = await programAsks();
  const until = new URL(request.url).searchParams.get('until') ?? '';
  return respond(programExtensionTried(context, { ...sent, enquiryId: idOf((await params).id), until }));
}

export async function POST(request: Request, { params }: OrderParams) {
  const program = await programAsks();
  const enquiryId = idOf((await params).id);
  const run = async (extension: z.infer<typeof extensionSchema>) =>
    programExtension(program.context, { ...program.sent, enquiryId, ...extension });
  return respond(await changeOnce({ program, request, schema: extensionSchema, deed: `extend ${enquiryId}`, run }));
}
