import { asking } from '#app/_lib/asking.ts';
import { respond } from '#app/_lib/respond.ts';
import { searchHouse } from '#lib/services/enquiries/search-house.ts';

export async function GET(request: Request): Promise<Response> {
  return respond(searchHouse(await asking(), new URL(request.url).searchParams.get('q') ?? ''));
}
