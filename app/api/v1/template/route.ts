import { listTemplate } from '#lib/services/list-template.ts';

export function GET(): Response {
  return new Response(listTemplate(), {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': 'attachment; filename="valve-schedule-template.csv"',
    },
  });
}
