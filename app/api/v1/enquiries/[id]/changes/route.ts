import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, respond } from '#app/_lib/respond.ts';
import { listChanges } from '#lib/services/schedule/read-changes.ts';

/** The newest changes of the schedule, each of which can be taken back. */
export async function GET(_request: Request, { params }: EnquiryParams): Promise<Response> {
  return respond(listChanges(await asking(), idOf((await params).id)));
}
