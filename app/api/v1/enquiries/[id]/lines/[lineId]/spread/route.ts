import { asking } from '#app/_lib/asking.ts';
import { idOf, problem, respond } from '#app/_lib/respond.ts';
import { spreadQuerySchema } from '#lib/contracts/spread.ts';
import { failed } from '#lib/kernel/result.ts';
import { spreadDuty } from '#lib/services/lines/spread-duty.ts';

interface LineParams {
  readonly params: Promise<{ readonly id: string; readonly lineId: string }>;
}

export async function GET(request: Request, { params }: LineParams): Promise<Response> {
  const { id, lineId } = await params;
  const query = spreadQuerySchema.safeParse(Object.fromEntries(new URL(request.url).searchParams));
  if (!query.success)
    return problem(
      failed({ code: 'query-invalid', sentence: 'The number of draws (runs) is a whole number from 100 to 10000.' }),
    );
  return respond(spreadDuty(await asking(), { enquiryId: idOf(id), lineId: idOf(lineId), ...query.data }));
}
