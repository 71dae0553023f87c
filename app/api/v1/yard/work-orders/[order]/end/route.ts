import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { workEndSchema } from '#lib/contracts/yard-moves.ts';
import { endWork } from '#lib/services/yard/work/step-work-order.ts';

export async function POST(
  request: Request,
  { params }: { readonly params: Promise<{ readonly order: string }> },
): Promise<Response> {
  const body = await readBody(request, workEndSchema);
  if (!body.ok) return problem(body);
  return respond(endWork(await asking(), { number: (await params).order, ...body.value }));
}
