import { asking } from '#app/_lib/asking.ts';
import { respond } from '#app/_lib/respond.ts';
import type { BookingParams } from '#app/_lib/yard-params.ts';
import { issueReturnNote } from '#lib/services/yard/back/issue-return-note.ts';

export async function POST(_request: Request, { params }: BookingParams): Promise<Response> {
  return respond(await issueReturnNote(await asking(), { number: (await params).number }), 201);
}
