import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { listLines } from '#lib/services/schedule/list-lines.ts';

export const dynamic = 'force-dynamic';

const LOOKED_AT = 100;
/** A repeated tag is told apart by its row, as in `V-7 (row 12)`. */
const WITH_ROW = /^(.*) \(row (\d+)(?:, \d+)?\)$/;

interface FindContext {
  readonly params: Promise<{ readonly id: string }>;
}

/** Leads from a tag to its line; one that is gone leads to the schedule, where the filter says that no line has it. */
export async function GET(request: Request, { params }: FindContext): Promise<Response> {
  const id = idOf((await params).id);
  const context = await asking();
  const asked = new URL(request.url).searchParams.get('tag') ?? '';
  if (asked === '') return to(`/enquiries/${id}`);
  const repeated = WITH_ROW.exec(asked);
  const tag = repeated?.[1] ?? asked;
  const found = listLines(context, { enquiryId: id, from: 0, count: LOOKED_AT, text: tag });
  const lines = found.ok ? found.value.lines : [];
  const line =
    lines.find((other) => other.tag === asked) ??
    lines.find((other) => other.tag === tag && other.row === Number(repeated?.[2]));
  return to(line ? `/enquiries/${id}/lines/${line.id}` : `/enquiries/${id}?text=${encodeURIComponent(tag)}`);
}

/** Before anything is drawn, so that a screen is not loaded twice. The address stays the one that was asked at. */
function to(path: string): Response {
  return new Response(null, { status: 303, headers: { location: path } });
}
