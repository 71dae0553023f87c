import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { bayToRenameSchema } from '#lib/contracts/stock-requests.ts';
import { removeBay, renameBay } from '#lib/services/stock/change-bay.ts';

interface BayParams {
  readonly params: Promise<{ readonly depot: string; readonly bay: string }>;
}

export async function POST(request: Request, { params }: BayParams): Promise<Response> {
  const body = await readBody(request, bayToRenameSchema);
  return body.ok ? respond(renameBay(await asking(), { ...(await params), ...body.value })) : problem(body);
}

export async function DELETE(_request: Request, { params }: BayParams): Promise<Response> {
  return respond(removeBay(await asking(), await params));
}
