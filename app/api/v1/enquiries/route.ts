import { asking } from '#app/_lib/asking.ts';
import { readEnquiryAddress } from '#app/_lib/enquiry-list-address.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { newEnquirySchema } from '#lib/contracts/requests.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { findEnquiries } from '#lib/services/enquiries/find-enquiries.ts';

/** A page of the list, by the same filters as its address. */
export async function GET(request: Request): Promise<Response> {
  const asked = readEnquiryAddress({ state: 'all', ...Object.fromEntries(new URL(request.url).searchParams) });
  return respond(findEnquiries(await asking(), asked));
}

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, newEnquirySchema);
  if (!body.ok) return problem(body);
  return respond(createEnquiry(await asking(), body.value), 201);
}
