import { type EnquiryParams, file, idOf, problem } from '#app/_lib/respond.ts';
import { bookedPackingList } from '#lib/services/booked-packing-list.ts';
import { openHouse } from '#lib/services/open-house.ts';

/** The packing list with the serial numbers of the units that an accepted quote holds. */
export async function GET(_request: Request, { params }: EnquiryParams): Promise<Response> {
  const paper = await bookedPackingList(openHouse(), { quoteId: idOf((await params).id) });
  if (!paper.ok) return problem(paper);
  return file(paper.value);
}
