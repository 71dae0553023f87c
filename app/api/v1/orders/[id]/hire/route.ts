import { type OrderParams, programAsks } from '#app/_lib/program.ts';
import { idOf, respond } from '#app/_lib/respond.ts';
import { programHire } from '#lib/services/self-service/program-hire.ts';

export async function GET(_request: Request, { params }: OrderParams) {
  const { context, sent } = await programAsks();
  return respond(programHire(context, { ...sent, enquiryId: idOf((await params).id) }));
}
