import { asking } from '#app/_lib/asking.ts';
import { respond } from '#app/_lib/respond.ts';
import { takeOffHousePrices } from '#lib/services/house/house-record.ts';

interface DayParams {
  readonly params: Promise<{ readonly day: string }>;
}

export async function DELETE(_request: Request, { params }: DayParams): Promise<Response> {
  return respond(takeOffHousePrices(await asking(), (await params).day));
}
