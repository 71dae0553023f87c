import { asking } from '#app/_lib/asking.ts';
import { readBody, respond } from '#app/_lib/respond.ts';
import { trialSchema } from '#lib/contracts/equipment-requests.ts';
import { haltTrial, readTrial, startTrial } from '#lib/services/house/try-change.ts';

export async function GET(): Promise<Response> {
  return respond(readTrial(await asking()));
}

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, trialSchema);
  return respond(body.ok ? startTrial(await asking(), body.value) : body);
}

export async function DELETE(): Promise<Response> {
  return respond(haltTrial(await asking()));
}
