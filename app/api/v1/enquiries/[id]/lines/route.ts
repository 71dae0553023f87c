import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { cellEditsSchema, newLinesSchema, removedLinesSchema } from '#lib/contracts/requests.ts';
import { addLines, removeLines } from '#lib/services/schedule/change-lines.ts';
import { editCells } from '#lib/services/schedule/edit-cells.ts';
import { listLines } from '#lib/services/schedule/list-lines.ts';

export async function GET(request: Request, { params }: EnquiryParams): Promise<Response> {
  const query = new URL(request.url).searchParams;
  return respond(
    listLines(await asking(), {
      enquiryId: idOf((await params).id),
      from: idOf(query.get('from') ?? '0'),
      count: idOf(query.get('count') ?? '200'),
      text: query.get('text') ?? '',
      ...(query.get('only') === 'problems' ? { only: 'problems' as const } : {}),
    }),
  );
}

export async function POST(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, newLinesSchema);
  if (!body.ok) return problem(body);
  return respond(addLines(await asking(), { enquiryId: idOf((await params).id), ...body.value }), 201);
}

export async function PATCH(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, cellEditsSchema);
  if (!body.ok) return problem(body);
  return respond(editCells(await asking(), { enquiryId: idOf((await params).id), ...body.value }));
}

export async function DELETE(request: Request, { params }: EnquiryParams): Promise<Response> {
  const body = await readBody(request, removedLinesSchema);
  if (!body.ok) return problem(body);
  return respond(removeLines(await asking(), { enquiryId: idOf((await params).id), ...body.value }));
}
