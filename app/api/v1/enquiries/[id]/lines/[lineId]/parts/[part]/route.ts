import { asking } from '#app/_lib/asking.ts';
import { idOf, respond } from '#app/_lib/respond.ts';
import { whyPart } from '#lib/services/lines/why-part.ts';

interface PartParams {
  readonly params: Promise<{ readonly id: string; readonly lineId: string; readonly part: string }>;
}

export async function GET(_request: Request, { params }: PartParams): Promise<Response> {
  const { id, lineId, part } = await params;
  return respond(whyPart(await asking(), { enquiryId: idOf(id), lineId: idOf(lineId), part }));
}
