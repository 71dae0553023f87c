import { asking } from '#app/_lib/asking.ts';
import { liveStream } from '#app/_lib/live-stream.ts';
import { type EnquiryParams, idOf, problem } from '#app/_lib/respond.ts';
import { newestChange } from '#lib/services/schedule/read-changes.ts';

export const dynamic = 'force-dynamic';

/** Server-sent events: every change of the enquiry as it is made, from the one that the screen knows. */
export async function GET(request: Request, { params }: EnquiryParams): Promise<Response> {
  const enquiryId = idOf((await params).id);
  const query = new URL(request.url).searchParams;
  const context = { ...(await asking()), screen: (query.get('screen') ?? '').slice(0, 60) };
  const newest = newestChange(context, enquiryId);
  if (!newest.ok) return problem(newest);
  const known = request.headers.get('last-event-id') ?? query.get('after');
  const after = known === null ? newest.value : idOf(known);
  return new Response(liveStream(context, { enquiryId, after, signal: request.signal }), {
    headers: {
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store, no-transform',
      'x-accel-buffering': 'no',
    },
  });
}
