import { type EnquiryParams, idOf, problem } from '#app/_lib/respond.ts';
import { visitTemplate } from '#lib/services/import-visits.ts';
import { openHouse } from '#lib/services/open-house.ts';

/** The as-found list of an enquiry’s valves, to fill in. */
export async function GET(_request: Request, { params }: EnquiryParams): Promise<Response> {
  const list = visitTemplate(openHouse(), idOf((await params).id));
  if (!list.ok) return problem(list);
  return new Response(list.value, {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': 'attachment; filename="as-found.csv"',
    },
  });
}
