import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, file, idOf, problem } from '#app/_lib/respond.ts';
import { readDespatch } from '#lib/services/yard/out/delivery-despatch.ts';

export async function GET(_request: Request, { params }: EnquiryParams): Promise<Response> {
  const advice = readDespatch(await asking(), idOf((await params).id));
  return advice.ok ? file(advice.value) : problem(advice);
}
