import { asking } from '#app/_lib/asking.ts';
import { readBody, respond } from '#app/_lib/respond.ts';
import { saveModelSchema } from '#lib/contracts/equipment-requests.ts';
import { saveModel } from '#lib/services/equipment/save-model.ts';

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, saveModelSchema);
  return respond(body.ok ? saveModel(await asking(), body.value) : body);
}
