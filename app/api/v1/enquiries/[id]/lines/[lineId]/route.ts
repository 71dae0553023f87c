import { asking } from '#app/_lib/asking.ts';
import { idOf, respond } from '#app/_lib/respond.ts';
import { openLine } from '#lib/services/lines/open-line.ts';

interface LineParams {
  readonly params: Promise<{ readonly id: string; readonly lineId: string }>;
}

export async function GET(_request: Request, { params }: LineParams): Promise<Response> {
  const { id, lineId } = await params;
  return respond(openLine(await asking(), { enquiryId: idOf(id), lineId: idOf(lineId) }));
}
