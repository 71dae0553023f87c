import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { transferToSendSchema } from '#lib/contracts/stock-requests.ts';
import { sendTransfer } from '#lib/services/stock/send-transfer.ts';

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, transferToSendSchema);
  return body.ok ? respond(sendTransfer(await asking(), body.value), 201) : problem(body);
}
