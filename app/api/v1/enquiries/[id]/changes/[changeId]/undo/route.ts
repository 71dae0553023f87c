import { asking } from '#app/_lib/asking.ts';
import { idOf, respond } from '#app/_lib/respond.ts';
import { undoChange } from '#lib/services/schedule/undo-change.ts';

interface ChangeParams {
  readonly params: Promise<{ readonly id: string; readonly changeId: string }>;
}

export async function POST(_request: Request, { params }: ChangeParams): Promise<Response> {
  const { id, changeId } = await params;
  return respond(undoChange(await asking(), { enquiryId: idOf(id), changeId: idOf(changeId) }));
}
