import { asking } from '#app/_lib/asking.ts';
import { idOf, respond } from '#app/_lib/respond.ts';
import { alikeRecords } from '#lib/services/customers/alike-customers.ts';

/** Who is here already, while something is typed. */
export async function GET(request: Request): Promise<Response> {
  const { searchParams } = new URL(request.url);
  const kind = searchParams.get('kind');
  return respond(
    alikeRecords(await asking(), {
      kind: kind === 'site' || kind === 'contact' ? kind : 'customer',
      name: searchParams.get('name') ?? '',
      email: searchParams.get('email') ?? '',
      telephone: searchParams.get('telephone') ?? '',
      customerId: idOf(searchParams.get('customer') ?? ''),
      self: idOf(searchParams.get('self') ?? ''),
    }),
  );
}
