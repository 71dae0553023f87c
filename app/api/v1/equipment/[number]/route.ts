import { asking } from '#app/_lib/asking.ts';
import { readBody, respond } from '#app/_lib/respond.ts';
import { modelActSchema } from '#lib/contracts/equipment-requests.ts';
import { bringBackModel, retireModel, undoModelChange } from '#lib/services/equipment/retire-model.ts';

interface ModelParams {
  readonly params: Promise<{ readonly number: string }>;
}

const ACTS = { retire: retireModel, 'bring back': bringBackModel, undo: undoModelChange } as const;

export async function POST(request: Request, { params }: ModelParams): Promise<Response> {
  const { number } = await params;
  const body = await readBody(request, modelActSchema);
  if (!body.ok) return respond(body);
  return respond(ACTS[body.value.act](await asking(), { number, version: body.value.version }));
}
