import { asking } from '#app/_lib/asking.ts';
import { respond } from '#app/_lib/respond.ts';
import { beginWork } from '#lib/services/yard/work/step-work-order.ts';

export async function POST(
  _request: Request,
  { params }: { readonly params: Promise<{ readonly order: string }> },
): Promise<Response> {
  return respond(beginWork(await asking(), (await params).order));
}
