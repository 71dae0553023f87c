import { asking } from '#app/_lib/asking.ts';
import { readBody, respond } from '#app/_lib/respond.ts';
import { houseSaveSchema } from '#lib/contracts/equipment-requests.ts';
import { saveHousePrices, saveHouseRules, saveHouseStanding } from '#lib/services/house/house-record.ts';

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, houseSaveSchema);
  if (!body.ok) return respond(body);
  const context = await asking();
  const input = body.value;
  if (input.part === 'standing') return respond(saveHouseStanding(context, input));
  if (input.part === 'rules') return respond(saveHouseRules(context, input));
  return respond(saveHousePrices(context, input));
}
