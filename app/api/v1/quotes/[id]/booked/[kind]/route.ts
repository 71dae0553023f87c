import { asking } from '#app/_lib/asking.ts';
import { file, idOf, problem } from '#app/_lib/respond.ts';
import { failed } from '#lib/kernel/result.ts';
import { BOOKED_PAPERS, bookedPaper } from '#lib/services/quotes/booked-papers.ts';

interface BookedParams {
  readonly params: Promise<{ readonly id: string; readonly kind: string }>;
}

/** What names the units that an accepted quote holds: the packing list with serial numbers, or the despatch advice. */
export async function GET(_request: Request, { params }: BookedParams): Promise<Response> {
  const { id, kind: named } = await params;
  const kind = BOOKED_PAPERS.find((one) => one === named);
  if (kind === undefined) {
    const sentence = `There is no paper “${named}” of a booking; there are ${BOOKED_PAPERS.join(' and ')}.`;
    return problem(failed({ code: 'no-such-paper', sentence }));
  }
  const paper = await bookedPaper(await asking(), { quoteId: idOf(id), kind });
  return paper.ok ? file(paper.value) : problem(paper);
}
