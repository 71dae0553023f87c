import { asking } from '#app/_lib/asking.ts';
import { respond } from '#app/_lib/respond.ts';
import { takeOffRateCard } from '#lib/services/equipment/rate-cards.ts';

interface CardParams {
  readonly params: Promise<{ readonly number: string; readonly day: string }>;
}

export async function DELETE(_request: Request, { params }: CardParams): Promise<Response> {
  const { number, day } = await params;
  return respond(takeOffRateCard(await asking(), { number, startsOn: day }));
}
