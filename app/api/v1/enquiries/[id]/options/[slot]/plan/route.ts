import { asking } from '#app/_lib/asking.ts';
import { type OptionParams, optionKey } from '#app/_lib/option-key.ts';
import { respond } from '#app/_lib/respond.ts';
import { haltPlan, planState, startPlan } from '#lib/services/plans/plan-enquiry.ts';

export async function GET(_request: Request, { params }: OptionParams): Promise<Response> {
  return respond(planState(await asking(), await optionKey(params)));
}

export async function POST(_request: Request, { params }: OptionParams): Promise<Response> {
  return respond(startPlan(await asking(), await optionKey(params)), 202);
}

export async function DELETE(_request: Request, { params }: OptionParams): Promise<Response> {
  return respond(haltPlan(await asking(), await optionKey(params)));
}
