import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { newEnquirySchema } from '#lib/contracts/requests.ts';
import { createEnquiry } from '#lib/services/create-enquiry.ts';
import { listEnquiries } from '#lib/services/list-enquiries.ts';
import { openHouse } from '#lib/services/open-house.ts';

export function GET(): Response {
  return respond(listEnquiries(openHouse()));
}

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, newEnquirySchema);
  if (!body.ok) return problem(body);
  return respond(createEnquiry(openHouse(), body.value), 201);
}
