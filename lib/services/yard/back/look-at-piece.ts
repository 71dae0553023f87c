/*
 * What a scan at check-in means, before anything is written: the awaited unit, or why it is none.
 * Invariant: reads only.
 * Not here: checking it in (check-in.ts).
 * Read next: find-piece.ts.
 */
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { findBookedPiece, mayComeIn } from './find-piece.ts';
import { returnTakenIn } from './return-record.ts';

export interface LookedAt {
  readonly returnId: number;
  readonly scan: string;
}

export function lookAtPiece(context: Context, { returnId, scan }: LookedAt): Result<{ readonly serial: string }> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const record = returnTakenIn(db, returnId);
  if (!record.ok) return record;
  const found = findBookedPiece(db, { booking: record.value.booking, scan });
  if (!found.ok) return found;
  const may = mayComeIn(found.value);
  return may.ok ? ok({ serial: found.value.unit.serial }) : may;
}
