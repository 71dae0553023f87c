import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { newEnquirySchema } from '#lib/contracts/requests.ts';
import { createEnquiry } from '#lib/services/create-enquiry.ts';
import { listEnquiries } from '#lib/services/list-enquiries.ts';

export async function GET(): Promise<Response> {
  return respond(listEnquiries(await asking()));
}

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, newEnquirySchema);
  if (!body.ok) return problem(body);
  return respond(createEnquiry(await asking(), body.value), 201);
}
