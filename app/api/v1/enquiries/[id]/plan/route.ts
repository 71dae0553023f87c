import { type EnquiryParams, idOf, respond } from '#app/_lib/respond.ts';
import { openHouse } from '#lib/services/open-house.ts';
import { haltPlan, planState, startPlan } from '#lib/services/plan-enquiry.ts';

export async function GET(_request: Request, { params }: EnquiryParams): Promise<Response> {
  return respond(planState(openHouse(), idOf((await params).id)));
}

export async function POST(_request: Request, { params }: EnquiryParams): Promise<Response> {
  return respond(startPlan(openHouse(), idOf((await params).id)), 202);
}

export async function DELETE(_request: Request, { params }: EnquiryParams): Promise<Response> {
  return respond(haltPlan(openHouse(), idOf((await params).id)));
}
