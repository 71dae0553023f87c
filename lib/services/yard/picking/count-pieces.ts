/*
 * Counted pieces are picked by number: what is counted must be what is booked.
 * Invariant: too few are refused, so that nothing is left behind unseen.
 * Not here: how many the house has (lib/services/stock).
 * Read next: ../take-scan.ts.
 */
import { changeBookingItem } from '#db/queries/bookings.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { isPicked, pickFacts } from './pick-facts.ts';
import type { ScanAnswer, ScanWork } from './scan-work.ts';
import { wrongLabel } from './scan-work.ts';

export function countPieces({
  tx,
  context,
  booking,
  read,
  count,
}: ScanWork & { readonly count: number }): Result<ScanAnswer> {
  if (read.kind !== 'model') return wrongLabel(read, 'the label on the box of counted pieces');
  const rows = pickFacts(tx, { context, booking }).items.filter(({ model_number }) => model_number === read.model);
  if (rows.length === 0) return failed({ code: 'not-in-this-job', sentence: `${read.model} is not in this job.` });
  const open = rows.filter((row) => !isPicked(row));
  if (open.length === 0)
    return failed({ code: 'pieces-picked-already', sentence: `${read.model} is counted already.` });
  const wanted = open.reduce((sum, row) => sum + row.count, 0);
  if (count !== wanted)
    return failed({ code: 'count-differs', sentence: `${wanted} of ${read.model} are booked, ${count} counted.` });
  for (const row of open) changeBookingItem(tx, { id: row.id, set: { state: 'allocated' } });
  return ok({ sentence: `${count} × ${read.model} picked.`, about: read.model });
}
