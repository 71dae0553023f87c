/*
 * Counts pieces without serial numbers that came back with a return: how many, and how many of what was sold are unused.
 * Invariant: no more come back in all than were sent; only what is sold can be unused.
 * Not here: what of them is charged (charges-of.ts).
 * Read next: charges-of.ts, counted-pieces.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { putCount } from '#db/queries/returns.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { countedPieces } from './counted-pieces.ts';
import { whoIs } from './open-return.ts';
import { returnUnderWay } from './return-record.ts';

export interface CountSeen {
  readonly returnId: number;
  readonly model: string;
  readonly back: number;
  readonly unused: number;
}

export function countBack(context: Context, seen: CountSeen): Result<{ readonly back: number }> {
  const allowed = authorise(context, 'take equipment back');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => countPiecesBack(tx, { context, seen }), { behavior: 'immediate' });
}

interface Counting {
  readonly context: Context;
  readonly seen: CountSeen;
}

/** Within a transaction of whoever asks. */
export function countPiecesBack(tx: DbOrTx, { context, seen }: Counting): Result<{ readonly back: number }> {
  const record = returnUnderWay(tx, seen.returnId);
  if (!record.ok) return record;
  const { booking, row } = record.value;
  const counted = countedPieces(context, booking).find(({ model }) => model === seen.model);
  if (!counted || counted.sent === 0)
    return failed({ code: 'not-sent', sentence: `No ${seen.model} was sent with booking ${booking.number}.` });
  const others = counted.returns.filter(({ returnId }) => returnId !== row.id).reduce((sum, { back }) => sum + back, 0);
  if (seen.back + others > counted.sent)
    return failed({
      code: 'more-than-sent',
      sentence: `${counted.sent} of ${seen.model} were sent and ${others} came back before: ${seen.back} are too many. Put the others aside.`,
    });
  if (seen.unused > seen.back)
    return failed({ code: 'more-unused-than-back', sentence: 'No more can be unused than came back.' });
  if (seen.unused > 0 && !counted.isSold)
    return failed({
      code: 'not-sold',
      sentence: `${seen.model} is hired, not sold: only what is sold is credited when unused.`,
    });
  putCount(tx, {
    return_id: row.id,
    model_number: seen.model,
    back: seen.back,
    unused: seen.unused,
    at: timestamp(context),
    ...whoIs(context),
  });
  const detail = { return: row.sequence, model: seen.model, back: seen.back, unused: seen.unused };
  logChange(tx, { context, deed: { action: 'pieces counted', subject: `booking ${booking.number}`, detail } });
  return ok({ back: seen.back });
}
