import { asking } from '#app/_lib/asking.ts';
import { file, problem, readBody, respond } from '#app/_lib/respond.ts';
import { csvFileSchema } from '#lib/contracts/equipment-requests.ts';
import { exportRates, previewRates, takeRates } from '#lib/services/equipment/rates-csv.ts';

export async function GET(): Promise<Response> {
  const text = exportRates(await asking());
  if (!text.ok) return problem(text);
  const bytes = new TextEncoder().encode(text.value);
  return file({ fileName: 'rates.csv', mime: 'text/csv; charset=utf-8', bytes });
}

export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, csvFileSchema);
  if (!body.ok) return problem(body);
  const context = await asking();
  const { text, seen } = body.value;
  return seen === undefined ? respond(previewRates(context, text)) : respond(takeRates(context, { text, seen }));
}
