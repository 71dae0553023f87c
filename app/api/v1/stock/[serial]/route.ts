import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { unitActSchema } from '#lib/contracts/stock-requests.ts';
import { changeUnitNote } from '#lib/services/stock/change-unit.ts';
import { changeUnitState } from '#lib/services/stock/change-unit-state.ts';
import { moveUnit } from '#lib/services/stock/move-unit.ts';
import { openUnit } from '#lib/services/stock/open-unit.ts';
import { recordCheck } from '#lib/services/stock/record-check.ts';

interface UnitParams {
  readonly params: Promise<{ readonly serial: string }>;
}

export async function GET(_request: Request, { params }: UnitParams): Promise<Response> {
  return respond(openUnit(await asking(), (await params).serial));
}

export async function POST(request: Request, { params }: UnitParams): Promise<Response> {
  const context = await asking();
  const body = await readBody(request, unitActSchema);
  if (!body.ok) return problem(body);
  const { serial } = await params;
  switch (body.value.act) {
    case 'move':
      return respond(moveUnit(context, { serial, ...body.value }));
    case 'state':
      return respond(changeUnitState(context, { serial, ...body.value }));
    case 'check':
      return respond(recordCheck(context, { serial, ...body.value }));
    case 'note':
      return respond(changeUnitNote(context, { serial, ...body.value }));
  }
}
