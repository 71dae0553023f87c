import { asking } from '#app/_lib/asking.ts';
import { problem } from '#app/_lib/respond.ts';
import { listTemplate } from '#lib/services/schedule/list-template.ts';

export async function GET(): Promise<Response> {
  const template = listTemplate(await asking());
  if (!template.ok) return problem(template);
  return new Response(template.value, {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': 'attachment; filename="valve-schedule-template.csv"',
    },
  });
}
