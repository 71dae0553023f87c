import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, respond } from '#app/_lib/respond.ts';
import { haltPlan, planState, startPlan } from '#lib/services/plans/plan-enquiry.ts';

export async function GET(_request: Request, { params }: EnquiryParams): Promise<Response> {
  return respond(planState(await asking(), idOf((await params).id)));
}

export async function POST(_request: Request, { params }: EnquiryParams): Promise<Response> {
  return respond(startPlan(await asking(), idOf((await params).id)), 202);
}

export async function DELETE(_request: Request, { params }: EnquiryParams): Promise<Response> {
  return respond(haltPlan(await asking(), idOf((await params).id)));
}
