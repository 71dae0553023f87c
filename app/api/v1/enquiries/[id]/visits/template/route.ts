import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem } from '#app/_lib/respond.ts';
import { visitTemplate } from '#lib/services/visits/import-visits.ts';

/** The as-found list of an enquiry’s valves, to fill in. */
export async function GET(_request: Request, { params }: EnquiryParams): Promise<Response> {
  const list = visitTemplate(await asking(), idOf((await params).id));
  if (!list.ok) return problem(list);
  return new Response(list.value, {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': 'attachment; filename="as-found.csv"',
    },
  });
}
