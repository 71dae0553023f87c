import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { loadScanSchema } from '#lib/contracts/yard-moves.ts';
import { scanLoad } from '#lib/services/yard/out/load-delivery.ts';

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, loadScanSchema);
  if (!body.ok) return problem(body);
  return respond(scanLoad(await asking(), { deliveryId: idOf((await params).id), ...body.value }));
}
