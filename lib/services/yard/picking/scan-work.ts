/*
 * What a scan works on and what it answers.
 * Invariant: the booking is as it stands in this transaction.
 * Not here: keeping the answer (../answer-once.ts).
 * Read next: ../take-scan.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { BookingRow } from '#db/queries/bookings.ts';
import { type Failed, failed, type Refused } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import type { Scan } from '#lib/stock/scan-code.ts';

export interface ScanWork {
  readonly tx: DbOrTx;
  readonly context: Context;
  readonly booking: BookingRow;
  readonly read: Scan;
}

export interface ScanAnswer {
  /** A few words for a cold hand. */
  readonly sentence: string;
  /** What it was about: a serial number, a model, a case. */
  readonly about: string;
}

/** The label is of another kind than the screen asks for. */
export function wrongLabel(read: Scan, wanted: string): Failed<Refused> {
  if (read.kind === 'unknown') return failed({ code: 'scan-unreadable', sentence: read.sentence });
  return failed({
    code: 'scan-wrong-label',
    sentence: `That is the label of a ${read.kind === 'model' ? 'box of counted pieces' : read.kind}: scan ${wanted}.`,
  });
}
