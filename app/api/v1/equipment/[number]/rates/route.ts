import { asking } from '#app/_lib/asking.ts';
import { readBody, respond } from '#app/_lib/respond.ts';
import { rateCardSchema } from '#lib/contracts/equipment-requests.ts';
import { putRateCards } from '#lib/services/equipment/rate-cards.ts';

interface ModelParams {
  readonly params: Promise<{ readonly number: string }>;
}

export async function POST(request: Request, { params }: ModelParams): Promise<Response> {
  const { number } = await params;
  const body = await readBody(request, rateCardSchema);
  if (!body.ok) return respond(body);
  return respond(putRateCards(await asking(), { cards: [{ number, ...body.value }], action: 'rate card put on' }));
}
