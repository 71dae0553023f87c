import { asking } from '#app/_lib/asking.ts';
import { idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { unitSystem } from '#app/_lib/unit-system.ts';
import { whatIfSchema } from '#lib/contracts/requests.ts';
import { whatIf } from '#lib/services/lines/what-if.ts';

interface LineParams {
  readonly params: Promise<{ readonly id: string; readonly lineId: string }>;
}

/** Works a changed input out; nothing is saved. Figures are in SI, the picture is lettered in this browser’s units. */
export async function POST(request: Request, { params }: LineParams): Promise<Response> {
  const { id, lineId } = await params;
  const body = await readBody(request, whatIfSchema);
  if (!body.ok) return problem(body);
  return respond(
    whatIf(await asking(), { enquiryId: idOf(id), lineId: idOf(lineId), system: await unitSystem(), ...body.value }),
  );
}
