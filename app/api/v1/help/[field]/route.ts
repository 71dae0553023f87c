import { asking } from '#app/_lib/asking.ts';
import { respond } from '#app/_lib/respond.ts';
import { fieldHelp } from '#lib/services/lines/field-guide.ts';

interface FieldParams {
  readonly params: Promise<{ readonly field: string }>;
}

export async function GET(_request: Request, { params }: FieldParams): Promise<Response> {
  return respond(fieldHelp(await asking(), (await params).field));
}
