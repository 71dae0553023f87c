import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { transferArrivalSchema } from '#lib/contracts/stock-requests.ts';
import { arriveTransfer } from '#lib/services/stock/arrive-transfer.ts';

interface TransferParams {
  readonly params: Promise<{ readonly number: string }>;
}

export async function POST(request: Request, { params }: TransferParams): Promise<Response> {
  const body = await readBody(request, transferArrivalSchema);
  if (!body.ok) return problem(body);
  return respond(arriveTransfer(await asking(), { number: (await params).number, ...body.value }));
}
