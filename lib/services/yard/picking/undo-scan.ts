/*
 * Takes a scan back: the piece is held again and waits in its bay; what was packed of it comes out of its case.
 * Invariant: nothing that has left is undone here.
 * Not here: taking back a delivery (../undo-units.ts).
 * Read next: ../take-scan.ts.
 */
import { changeBookingItem } from '#db/queries/bookings.ts';
import { piecesOfLoad, removeLoadPiece } from '#db/queries/picking.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { stepUnits } from '../step-units.ts';
import { isPicked, pickFacts } from './pick-facts.ts';
import { type ScanAnswer, type ScanWork, wrongLabel } from './scan-work.ts';

export function undoScan(at: ScanWork): Result<ScanAnswer> {
  const { read } = at;
  if (read.kind === 'unit') return undoUnit(at, read.serial);
  if (read.kind === 'model') return undoCount(at, read.model);
  return wrongLabel(read, 'the piece that goes back');
}

function undoUnit({ tx, context, booking }: ScanWork, serial: string): Result<ScanAnswer> {
  const piece = pickFacts(tx, { context, booking }).pieces.find(({ row }) => row.unit_serial === serial);
  if (piece === undefined || !isPicked(piece.row)) return notPicked(serial);
  const stepped = stepUnits(tx, { context, booking, units: [piece.row], to: 'held', what: 'picking taken back' });
  if (!stepped.ok) return stepped;
  for (const { id, unit_serial } of piecesOfLoad(tx, booking.id))
    if (unit_serial === serial) removeLoadPiece(tx, { bookingId: booking.id, id });
  return ok({ sentence: `${serial} is back in its bay.`, about: serial });
}

function undoCount({ tx, context, booking }: ScanWork, model: string): Result<ScanAnswer> {
  const rows = pickFacts(tx, { context, booking }).items.filter((row) => row.model_number === model && isPicked(row));
  if (rows.length === 0) return notPicked(model);
  for (const row of rows) changeBookingItem(tx, { id: row.id, set: { state: 'held' } });
  for (const { id, unit_serial, model_number } of piecesOfLoad(tx, booking.id))
    if (unit_serial === null && model_number === model) removeLoadPiece(tx, { bookingId: booking.id, id });
  return ok({ sentence: `${model} is back in its bay.`, about: model });
}

function notPicked(code: string) {
  return failed({ code: 'not-picked', sentence: `${code} was not picked for this job.` });
}
