/*
 * Takes a photograph that a device of the yard kept: for the piece of a booking by its serial number, under a key of its own.
 * Invariant: a key is answered once, so a photograph that was sent twice is kept once.
 * Not here: which pictures are kept (return-photos.ts).
 * Read next: return-photos.ts, ../answer-once.ts.
 */
import { piecesOfBooking } from '#db/queries/returns.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { sha256 } from '#lib/services/sha256.ts';
import { answerOnce, orNothing, type Tx } from '../answer-once.ts';
import { bookingNumbered } from '../booking-record.ts';
import type { ScanAnswer } from '../picking/scan-work.ts';
import { keepPhoto } from './return-photos.ts';

export interface SentPhoto {
  readonly number: string;
  readonly key: string;
  readonly serial: string;
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

export function takePhoto(context: Context, { number, key, serial, fileName, bytes }: SentPhoto): Result<ScanAnswer> {
  const allowed = authorise(context, 'take equipment back');
  if (!allowed.ok) return allowed;
  const asked = { kind: 'photo', serial, sha256: sha256(bytes) };
  return context.database.db.transaction(
    (tx) => {
      const found = bookingNumbered(tx, number);
      if (!found.ok) return found;
      const booking = found.value;
      const work = (inner: Tx): Result<ScanAnswer> => {
        const piece = piecesOfBooking(inner, booking.id).findLast((one) => one.serial === serial);
        if (!piece)
          return failed({
            code: 'piece-not-in',
            sentence: `${serial} is not checked in for ${number}: check it in first, then photograph it.`,
          });
        const kept = keepPhoto(inner, { context, photo: { pieceId: piece.id, fileName, bytes } });
        return kept.ok ? ok({ sentence: `Photograph of ${serial} is kept.`, about: serial }) : kept;
      };
      return answerOnce(tx, { context, key, asked, bookingId: booking.id }, () =>
        ok({ booking, answer: orNothing(tx, work) }),
      );
    },
    { behavior: 'immediate' },
  );
}
