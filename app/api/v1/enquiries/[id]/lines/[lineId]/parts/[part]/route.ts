import { idOf, respond } from '#app/_lib/respond.ts';
import { openHouse } from '#lib/services/open-house.ts';
import { whyPart } from '#lib/services/why-part.ts';

interface PartParams {
  readonly params: Promise<{ readonly id: string; readonly lineId: string; readonly part: string }>;
}

export async function GET(_request: Request, { params }: PartParams): Promise<Response> {
  const { id, lineId, part } = await params;
  return respond(whyPart(openHouse(), { enquiryId: idOf(id), lineId: idOf(lineId), part }));
}
