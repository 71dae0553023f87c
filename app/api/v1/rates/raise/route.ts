import { asking } from '#app/_lib/asking.ts';
import { readBody, respond } from '#app/_lib/respond.ts';
import { raiseSchema } from '#lib/contracts/equipment-requests.ts';
import { previewRaise, takeRaise } from '#lib/services/equipment/raise-rates.ts';

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, raiseSchema);
  if (!body.ok) return respond(body);
  const { take, role, ...asked } = body.value;
  const raise = { ...asked, ...(role === undefined ? {} : { role }) };
  const context = await asking();
  return take === undefined ? respond(previewRaise(context, raise)) : respond(takeRaise(context, raise));
}
